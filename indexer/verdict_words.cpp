#include "indexer/verdict_words.hpp"

#include <algorithm>

#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"
#include "indexer/text.hpp"
#include "indexer/value_clauses.hpp"
#include "indexer/verdict_phrases.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kWordsAfter = 5, kWordsBefore = 2, kWordsAcross = 3, kWordsBeside = 2,
                      kWordsAround = 8;

Verdict turned(Verdict verdict) {
  return verdict == Verdict::kPass ? Verdict::kFail : Verdict::kPass;
}

// "no leaks" is good news, "no spark" is bad.
std::optional<Verdict> when_denied(std::string_view word) {
  if (is_good_to_lack(word)) return Verdict::kPass;
  if (is_bad_to_lack(word)) return Verdict::kFail;
  return std::nullopt;
}

// "pads too thin, disc", "servo holds, brake pipe": a verb tells how the thing before it went.
bool tells_what_goes_before(std::string_view word) {
  for (const char* verb : {"lifted", "jumps", "jumping", "below", "fails", "holds", "held",
                           "passed", "passes", "too", "leaks", "late"}) {
    if (word == verb) return true;
  }
  return false;
}

bool says_warmth(std::string_view word) {
  return word == "cold" || word == "hot" || word == "warm";
}

// "3", "cyl", "cold": which one of several; "one" and "a" may be anything.
bool is_count_of(const NotePage& page, std::size_t i) {
  const std::string& word = page.word(i);
  if (says_warmth(word)) return true;
  return (small_number(word) && word != "a" && word != "an" && word != "one") || word == "cyl" ||
         word == "cylinder" || word == "number";
}

// "could not feel [any play]", "can't find [a leak]": the search stands between "not" and what is
// not there.
bool says_perceive(std::string_view word) {
  for (const char* verb : {"feel", "find", "found", "see", "seen", "hear", "heard", "detect",
                           "notice", "felt", "any", "measure", "get", "show", "have", "had"}) {
    if (word == verb) return true;
  }
  return false;
}

}  // namespace

std::optional<VerdictWords> VerdictSearch::near(const PhraseMatch& match,
                                                VerdictReach reach) const {
  for (std::size_t i = match.first; i < match.last; ++i) {
    const std::string& word = page_.word(i);
    // "low side", "high pressure": which of two, not how it went.
    const bool names_side =
        i + 1 < match.last || (page_.same_clause(i, i + 1) && is_reading_[i + 1] != 0);
    if ((word == "low" || word == "high") && names_side) continue;
    const bool passes = says_pass(word);
    if (!passes && !says_fail(word)) continue;
    // "servo holds vacuum - fail"
    if (const auto outright = outright_after(match)) return outright;
    const Verdict verdict = passes ? Verdict::kPass : Verdict::kFail;
    if (const auto answer = answer_behind(page_, match.last, verdict)) {
      return VerdictWords{*answer, {match.last, match.last + 1}};
    }
    // "no pins burnt": a denial before the whole phrase
    const bool is_turned = is_denied_at(page_, i) || (!passes && is_denied_at(page_, match.first));
    const VerdictWords said{is_turned ? turned(verdict) : verdict, {i, i + 1}};
    return i + 1 == match.last ? outweighed(said) : said;
  }
  if (const auto denied = of_denied(match)) return denied;
  if (const auto lacking = of_lacking(match)) return lacking;
  if (const auto found = after(match, reach)) return found;
  if (const auto found = before(match, reach)) return found;
  if (const auto found = of_all(match)) return found;
  return of_having(match);
}

// A verdict that is nothing else, right behind the phrase.
std::optional<VerdictWords> VerdictSearch::outright_after(const PhraseMatch& match) const {
  const std::size_t i = match.last;
  if (i >= page_.size() || page_.is_claimed(i) || !leads_on(page_, i - 1, i)) return std::nullopt;
  const std::string& word = page_.word(i);
  const bool fails = word == "fail" || word == "failed" || word == "fails" || word == "nok";
  const bool passes = word == "pass" || word == "passed" || word == "ok";
  if (!fails && !passes) return std::nullopt;
  return VerdictWords{fails ? Verdict::kFail : Verdict::kPass, {i, i + 1}};
}

// "the turbo has shaft play", "there is play in the ball joint": what should not be there is.
std::optional<VerdictWords> VerdictSearch::of_having(const PhraseMatch& match) const {
  constexpr std::size_t kReach = 4;
  bool should_lack = false;
  for (std::size_t i = match.first; i < match.last; ++i) {
    should_lack = should_lack || page_.word(i) == "play";
  }
  if (!should_lack) return std::nullopt;
  for (std::size_t i = match.last; i > 0 && i + kReach > match.first; --i) {
    const std::string& word = page_.word(i - 1);
    if (!page_.same_clause(i - 1, match.first) || is_negation(word)) return std::nullopt;
    if (word == "has" || word == "have" || word == "there" || word == "theres" || word == "got" ||
        word == "shows" || word == "felt") {
      return VerdictWords{Verdict::kFail, {i - 1, i}};
    }
  }
  return std::nullopt;
}

// "no play in the ball joint", "no spark at the tester".
std::optional<VerdictWords> VerdictSearch::of_denied(const PhraseMatch& match) const {
  if (match.first == 0 || !page_.same_clause(match.first - 1, match.first)) return std::nullopt;
  const std::size_t no = match.first - 1;
  if (!is_negation(page_.word(no)) || page_.is_claimed(no)) return std::nullopt;
  for (std::size_t i = match.first; i < match.last; ++i) {
    if (const auto verdict = when_denied(page_.word(i)))
      return VerdictWords{*verdict, {no, no + 1}};
  }
  return std::nullopt;
}

// "tested for combustion gas and there was none": at i, at the end of what is said.
std::optional<VerdictWords> VerdictSearch::said_none(const PhraseMatch& match,
                                                     std::size_t i) const {
  const bool is_none = page_.word(i) == "none" && !page_.is_claimed(i);
  if (!is_none || page_.same_clause(i, i + 1)) return std::nullopt;
  for (std::size_t k = match.first; k < match.last; ++k) {
    if (const auto verdict = when_denied(page_.word(k))) return VerdictWords{*verdict, {i, i + 1}};
  }
  return std::nullopt;
}

// "ball joint play: none", "shaft play checked, nil", "horn feed none".
std::optional<VerdictWords> VerdictSearch::of_lacking(const PhraseMatch& match) const {
  std::size_t i = match.last;
  while (i < page_.size() && i < match.last + 2 && says_look(page_.word(i))) ++i;
  if (i >= page_.size() || page_.is_claimed(i) || !leads_on(page_, match.last - 1, i)) {
    return std::nullopt;
  }
  const std::string& word = page_.word(i);
  if (word != "none" && word != "nil" && word != "zero" && word != "absent") return std::nullopt;
  for (std::size_t k = match.first; k < match.last; ++k) {
    if (const auto verdict = when_denied(page_.word(k))) return VerdictWords{*verdict, {i, i + 1}};
  }
  return std::nullopt;
}

// "dry and rusty", "clean but worn": bad news joined to good outweighs it.
VerdictWords VerdictSearch::outweighed(VerdictWords words) const {
  const std::size_t next = words.at.last;
  const auto here = [&](std::size_t i) { return page_.same_clause(i, words.at.first); };
  const bool joined = here(next) && (page_.word(next) == "and" || page_.word(next) == "but");
  const bool is_bad = joined && here(next + 1) && says_fail(page_.word(next + 1));
  if (is_bad) return {Verdict::kFail, {words.at.first, next + 2}};
  // "lipped but ok"
  const bool is_mild = joined && page_.word(next) == "but" && here(next + 1) &&
                       says_pass(page_.word(next + 1)) && words.verdict == Verdict::kFail;
  if (is_mild) return {Verdict::kPass, {words.at.first, next + 2}};
  return words.verdict == Verdict::kPass ? worst_of_several(words) : words;
}

// "1 ok 2 ok 3 open circuit", "left ok, right stiff": of several in a row the bad one decides.
VerdictWords VerdictSearch::worst_of_several(VerdictWords words) const {
  std::size_t i = words.at.last;
  while (i < page_.size() && leads_on(page_, i - 1, i)) {
    const std::size_t which = i;
    while (i < page_.size() && (i == which || leads_on(page_, which, i)) && !page_.is_claimed(i) &&
           is_finding_[i] == 0 && (says_position(page_.word(i)) || is_count_of(page_, i))) {
      ++i;
    }
    if (i == which || i >= page_.size() || page_.is_claimed(i) || is_finding_[i] != 0) break;
    const auto phrase = verdict_phrase_at(page_, i);
    const bool fails = phrase ? phrase->verdict == Verdict::kFail
                              : says_fail(page_.word(i)) || page_.word(i) == "open";
    std::size_t end = phrase ? phrase->at.last : i + 1;
    if (page_.same_clause(i, end) && says_warmth(page_.word(end))) ++end;  // "open hot"
    if (fails) return {Verdict::kFail, {words.at.first, end}};
    if (!says_pass(page_.word(i))) break;
    ++i;
  }
  return words;
}

std::optional<VerdictWords> VerdictSearch::at(std::size_t i) const {
  if (const auto found = verdict_phrase_at(page_, i)) return found;
  if (auto found = verdict_of_limits(page_, i)) {
    if (is_denied_at(page_, i)) found->verdict = turned(found->verdict);
    return found;
  }
  const std::string& word = page_.word(i);
  if (is_negation(word)) {
    std::size_t next = i + 1;
    while (page_.same_clause(next, i) &&
           (is_stop_word(page_.word(next)) || says_perceive(page_.word(next))) &&
           page_.word(next) != "that") {
      ++next;
    }
    if (!page_.same_clause(next, i) || page_.is_claimed(next)) return std::nullopt;
    const std::string& denied = page_.word(next);
    if (denied == "say" || denied == "tell" || denied == "judge" || denied == "conclusive") {
      return VerdictWords{Verdict::kUnclear, {i, next + 1}};
    }
    if (const auto verdict = when_denied(denied)) return VerdictWords{*verdict, {i, next + 1}};
    if (says_pass(denied)) return VerdictWords{Verdict::kFail, {i, next + 1}};
    if (says_fail(denied)) return VerdictWords{Verdict::kPass, {i, next + 1}};
    return std::nullopt;
  }
  if (says_unclear(word)) return VerdictWords{Verdict::kUnclear, {i, i + 1}};
  // "at steady 80 km/h"
  const bool is_speed = word == "steady" && i > 0 && page_.word(i - 1) == "at";
  // "20 mm free movement" is measured, not praised.
  const bool is_measured = word == "free" && page_.same_clause(i, i + 1) &&
                           (page_.word(i + 1) == "movement" || page_.word(i + 1) == "play" ||
                            page_.word(i + 1) == "travel");
  const bool passes = says_pass(word) && !is_speed && !is_measured;
  if (!passes && !says_fail(word)) return std::nullopt;
  const Verdict verdict = passes ? Verdict::kPass : Verdict::kFail;
  if (!is_denied_at(page_, i)) return outweighed({verdict, {i, i + 1}});
  std::size_t no = i;
  while (no > 0 && !is_negation(page_.word(no))) --no;
  return VerdictWords{turned(verdict), {no, i + 1}};
}

std::optional<VerdictWords> VerdictSearch::free_at(std::size_t i) const {
  if (page_.is_claimed(i) || is_finding_[i] != 0) return std::nullopt;
  return at(i);
}

bool VerdictSearch::counts(std::size_t i) const {
  const std::string& word = page_.word(i);
  return is_reading_[i] == 0 && !is_stop_word(word) && !says_position(word) &&
         !small_number(word) && !says_look(word);
}

// "no pins burnt", "none of the hoses split": the denial before the thing turns what is said of it.
VerdictWords VerdictSearch::turned_by_no(const PhraseMatch& match, VerdictWords words) const {
  if (match.first == 0 || words.verdict != Verdict::kFail) return words;
  const std::size_t no = match.first - 1;
  const bool denied =
      page_.same_clause(no, match.first) && page_.word(no) == "no" && !page_.is_claimed(no);
  if (!denied) return words;
  return {Verdict::kPass, {no, words.at.last}};
}

std::optional<VerdictWords> VerdictSearch::after(const PhraseMatch& match,
                                                 VerdictReach reach) const {
  std::size_t words = 0, i = match.last;
  const std::size_t most = reach == VerdictReach::kFar ? kWordsAfter : kWordsBeside;
  for (; page_.same_clause(i, match.first); ++i) {
    if (const auto none = said_none(match, i)) return none;
    auto found = free_at(i);
    const auto answer = found ? answer_behind(page_, found->at.last, found->verdict) : std::nullopt;
    if (answer) return VerdictWords{*answer, {i, found->at.last + 1}};
    if (found) return i == match.last ? turned_by_no(match, *found) : *found;
    if (is_finding_[i] != 0 || (counts(i) && ++words >= most)) return std::nullopt;
  }
  // "fuel filter looked at, clean": the clause after a comma may begin with it.
  if (reach == VerdictReach::kBeside) return std::nullopt;
  i = past_values(i);
  if (i >= page_.size() || !leads_on(page_, i - 1, i)) return std::nullopt;
  const std::size_t clause = i;
  for (words = 0; page_.same_clause(i, clause); ++i) {
    if (const auto found = free_at(i)) return found;
    if (is_finding_[i] != 0 || (counts(i) && ++words >= kWordsAcross)) return std::nullopt;
  }
  return std::nullopt;
}

// "compression 24 bar, 23 bar, 24 bar: good": past the clauses that hold nothing but readings.
std::size_t VerdictSearch::past_values(std::size_t i) const {
  while (i < page_.size() && leads_on(page_, i - 1, i)) {
    const std::size_t end = end_of_values(page_, is_finding_, is_reading_, i);
    if (end == i) return i;
    i = end;
  }
  return i;
}

// "CAN-H 2.6 V, CAN-L 2.4 V, both ok": what a clause says of both or all is said of each.
std::optional<VerdictWords> VerdictSearch::of_all(const PhraseMatch& match) const {
  constexpr std::size_t kClauses = 3;
  std::size_t i = match.last;
  while (page_.same_clause(i, match.first)) ++i;
  for (std::size_t n = 0; n < kClauses && i < page_.size(); ++n) {
    if (!leads_on(page_, i - 1, i)) return std::nullopt;
    const std::string& word = page_.word(i);
    if (word == "both" || word == "all" || word == "each" || word == "neither") {
      for (std::size_t k = i; k < i + 3 && page_.same_clause(k, i); ++k) {
        if (const auto found = free_at(k)) return found;
      }
      return std::nullopt;
    }
    const std::size_t clause = i;
    bool holds_reading = false;
    for (; page_.same_clause(i, clause); ++i) {
      if (free_at(i)) return std::nullopt;
      holds_reading = holds_reading || is_reading_[i] != 0;
    }
    if (!holds_reading) return std::nullopt;
  }
  return std::nullopt;
}

std::optional<VerdictWords> VerdictSearch::before(const PhraseMatch& match,
                                                  VerdictReach reach) const {
  const std::size_t most = reach == VerdictReach::kFar ? kWordsBefore : kWordsBeside;
  std::size_t words = 0;
  for (std::size_t i = match.first; i > 0 && page_.same_clause(i - 1, match.first); --i) {
    const auto found = free_at(i - 1);
    if (found && !tells_what_goes_before(page_.word(i - 1))) return found;
    if (is_finding_[i - 1] != 0 || (counts(i - 1) && ++words >= most)) return std::nullopt;
  }
  return std::nullopt;
}

// The clause as far as no other finding stands in it, and the one it leads on to when that holds
// none at all.
TokenRange VerdictSearch::reach_of(const PhraseMatch& match) const {
  TokenRange reach{match.first, match.last};
  const auto is_ours = [&](std::size_t i) {
    return page_.same_clause(i, match.first) && is_finding_[i] == 0;
  };
  while (reach.first > 0 && is_ours(reach.first - 1)) --reach.first;
  while (is_ours(reach.last)) ++reach.last;
  const std::size_t next = reach.last;
  const bool goes_on = page_.same_clause(next, match.first);
  if (goes_on || next >= page_.size() || !leads_on(page_, next - 1, next)) return reach;
  std::size_t end = next;
  for (; page_.same_clause(end, next); ++end) {
    if (is_finding_[end] != 0) return reach;
  }
  return {reach.first, end};
}

std::optional<VerdictWords> VerdictSearch::around(const PhraseMatch& match) const {
  const TokenRange reach = reach_of(match);
  std::optional<VerdictWords> good, bad;
  const std::size_t first = match.first > kWordsAround ? match.first - kWordsAround : 0;
  const std::size_t last = std::min(reach.last, match.last + kWordsAround);
  for (std::size_t i = std::max(reach.first, first); i < last; ++i) {
    const bool is_own = i >= match.first && i < match.last;
    if (is_own || page_.is_claimed(i) || is_finding_[i] != 0) continue;
    const std::string& word = page_.word(i);
    if (hints_unclear(word)) return VerdictWords{Verdict::kUnclear, {i, i + 1}};
    const auto plain = at(i);
    // "at the same time"
    const bool is_time = word == "same" && page_.same_clause(i, i + 1) &&
                         (page_.word(i + 1) == "time" || page_.word(i + 1) == "again");
    const bool hints = !plain && !is_time && !is_denied_at(page_, i);
    const bool passes = plain ? plain->verdict == Verdict::kPass : hints && hints_pass(word);
    const bool fails = plain ? plain->verdict == Verdict::kFail : hints && hints_fail(word);
    if (passes && !good) good = VerdictWords{Verdict::kPass, {i, i + 1}};
    if (fails && !bad) bad = VerdictWords{Verdict::kFail, {i, i + 1}};
  }
  return bad ? bad : good;
}

}  // namespace shoplore
