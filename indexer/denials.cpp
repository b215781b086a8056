#include "indexer/denials.hpp"

#include <algorithm>
#include <string_view>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestList = 24;  // tokens from a listed finding to the "or" that ends it
constexpr std::size_t kTakenBackReach = 12;  // tokens from a finding to where it is taken back

bool goes(std::string_view word) {
  return word == "goes" || word == "went" || word == "gone" || word == "stayed" ||
         word == "stays" || word == "is" || word == "now" || word == "has" || word == "then" ||
         word == "straight";
}

bool stays(std::string_view word) {
  return word == "is" || word == "was" || word == "stays" || word == "stayed" || word == "now" ||
         word == "remains" || word == "remained" || word == "still" || word == "has";
}

// Words that deny a finding after them, beside the negations: "nil leaks", "denies overheating",
// "absence of", "free of".
bool denies_what_follows(std::string_view word, std::string_view next) {
  if (word == "free" || word == "clear") return next == "of" || next == "from";
  if (word == "far") return next == "from";
  if (word == "rules" || word == "ruled" || word == "ruling") return next == "out";
  return word == "nil" || word == "zero" || word == "denies" || word == "denied" ||
         word == "absence" || word == "lack";
}

// "no it fails to finish", "no the lamp is on": an answer, and what follows is said anew.
bool begins_statement(std::string_view word) {
  return word == "it" || word == "he" || word == "she" || word == "they" || word == "we" ||
         word == "i" || word == "its" || word == "there" || word == "the" || word == "this" ||
         word == "that" || word == "his" || word == "her";
}

// "[the customer says] no": who answers a question, and that he does.
bool leads_answer(std::string_view word) {
  return is_stop_word(word) || word == "customer" || word == "cust" || word == "owner" ||
         word == "driver" || word == "says" || word == "said" || word == "reckons" ||
         word == "he" || word == "she" || word == "they" || word == "answer" ||
         word == "apparently" || word == "definitely" || word == "certainly";
}

// "ABS lamp", "EML"
bool names_lamp(const Token& token) {
  return token.stem == "lamp" || token.text == "eml" || token.text == "mil" ||
         token.text == "cel" || token.text == "tpms" || token.text == "epc";
}

bool says_where_lamp(std::string_view word) {
  return word == "dash" || word == "dashboard" || word == "cluster" || word == "the" ||
         word == "on" || word == "in";
}

bool says_perceived(std::string_view word) {
  return word == "see" || word == "find" || word == "feel" || word == "hear" || word == "notice";
}

bool is_short_number(std::string_view word) {
  return word.size() <= 2 && word.find_first_not_of("0123456789") == word.npos;
}

}  // namespace

bool parted_by_comma(const NotePage& page, std::size_t before, std::size_t after) {
  const std::string_view between = page.between(before, after);
  return between.find(',') != between.npos && between.find_first_of(";.:!?\n") == between.npos;
}

bool Denials::deny(TokenRange finding) {
  if (is_called_wrong(finding.last)) return !by_word_before(finding);
  if (is_said_well(finding) || by_word_after(finding.last)) return true;
  const bool before = by_word_before(finding);
  if (!before && taken_back(finding.last)) return true;
  if (!before && !by_list(finding)) return false;
  denied_ends_.push_back(finding.last);
  return true;
}

bool Denials::turn_round(const PhraseMatch& finding) {
  const bool turned = is_negation(page_.word(finding.first)) &&
                      page_.same_clause(finding.last, finding.first) &&
                      turns_denial_round(page_.word(finding.last));
  if (turned) page_.claim(finding.last);
  return turned;
}

bool Denials::by_word_before(TokenRange finding) {
  // "doesn't crank, just clicks": its own first word begins it anew.
  const std::string& opening = page_.word(finding.first);
  if (opening == "just" || opening == "only" || opening == "but") return false;
  std::size_t unknown = 0;
  bool is_joined = false, is_past_finding = false;
  for (std::size_t i = finding.first; i > 0 && page_.same_clause(i - 1, finding.first); --i) {
    const std::string& word = page_.word(i - 1);
    if (has_ended(i - 1, finding)) {
      page_.claim(i - 1);
      return true;
    }
    if (ends_negation(word) || leaves_brackets(i - 1)) return false;
    const bool claimed = page_.is_claimed(i - 1) && is_negation_[i - 1] == 0;
    const bool is_nothing =
        (word == "nothing" && page_.word(i) != "but") || denies_what_follows(word, page_.word(i));
    if (!claimed && (is_negation(word) || is_nothing)) {
      if (is_short_number(page_.word(i)) || is_how_often(i, finding)) return false;
      if (word == "no" && begins_statement(page_.word(i))) return false;
      // "no isolation warning hybrid lamp on", written without a stop
      if (is_past_finding && !is_joined && is_lamp_on(finding)) return false;
      is_negation_[i - 1] = 1;
      page_.claim(i - 1);
      return true;
    }
    if (word == "or" || word == "nor") {
      unknown = 0;
      is_joined = true;
    }
    is_past_finding = is_past_finding || claimed;
    if (!claimed && !is_stop_word(word) && ++unknown > 1) return false;
  }
  return false;
}

// "hybrid lamp on", said whole
bool Denials::is_lamp_on(TokenRange finding) const {
  return finding.last - finding.first > 1 && page_.word(finding.last - 1) == "on";
}

// "it has stopped squealing", but not "has not stopped squealing" or "stopped for fuel".
bool Denials::has_ended(std::size_t word, TokenRange finding) const {
  const bool is_end = page_.word(word) == "stopped" || page_.word(word) == "ceased";
  if (!is_end || page_.is_claimed(word) || is_denied_at(page_, word)) return false;
  for (std::size_t i = finding.first; i < finding.last; ++i) {
    if (page_.word(i).ends_with("ing")) return true;
  }
  return false;
}

// "caller (no name) indicator flashes": what is said in brackets ends with them.
bool Denials::leaves_brackets(std::size_t before) const {
  if (before + 1 >= page_.size()) return false;
  const std::size_t from = page_.token(before).end, to = page_.token(before + 1).begin;
  return from < to && page_.text().substr(from, to - from).find(')') != std::string_view::npos;
}

// "not always misfiring", "does not stall every time".
bool Denials::is_how_often(std::size_t after_negation, TokenRange finding) const {
  return says_how_often(page_.word(after_negation)) ||
         (page_.same_clause(finding.first, finding.last) &&
          says_how_often(page_.word(finding.last)));
}

// "Misfire? No.", "Does it blow cold? Customer says no."
std::size_t Denials::answer_to_question(std::size_t next) const {
  if (next == 0 || next >= page_.size()) return next;
  const std::size_t from = page_.token(next - 1).end;
  const std::string_view between = page_.text().substr(from, page_.token(next).begin - from);
  if (between.find('?') == between.npos) return next;
  // "Oil leak? Can't see one."
  const bool sees_none = page_.same_clause(next, next + 1) && page_.word(next + 1) == "not" &&
                         page_.same_clause(next, next + 2) && says_perceived(page_.word(next + 2));
  if (sees_none) return next + 2;
  std::size_t answer = next;
  while (page_.same_clause(answer, next) && !page_.is_claimed(answer) &&
         leads_answer(page_.word(answer)) && !is_negation(page_.word(answer))) {
    ++answer;
  }
  const bool ends = !page_.same_clause(answer, answer + 1);
  return answer > next && page_.same_clause(answer, next) && ends && page_.word(answer) == "no"
             ? answer
             : next;
}

bool Denials::answers_question(std::size_t next) const {
  const std::string& word = page_.word(next);
  if (next == 0 || (word != "no" && word != "nope" && word != "not" && word != "never")) {
    return false;
  }
  const std::size_t from = page_.token(next - 1).end;
  const std::string_view between = page_.text().substr(from, page_.token(next).begin - from);
  const bool is_asked = between.find('?') != between.npos;
  return is_asked && (next + 1 >= page_.size() || !page_.same_clause(next, next + 1) ||
                      page_.word(next + 1) == "longer" || page_.word(next + 1) == "any" ||
                      begins_statement(page_.word(next + 1)));
}

// "white smoke - no", "misfire: negative", "play not": a word of denial alone in the rest of the
// clause or in a clause of its own, unless it begins what comes next ("misfire, no smoke").
bool Denials::stands_alone_as_no(std::size_t next) const {
  const std::string& word = page_.word(next);
  const bool is_no = word == "no" || word == "not" || word == "never" || word == "negative" ||
                     word == "nope" || word == "nil" || word == "none";
  if (!is_no || next == 0) return false;
  const bool ends = next + 1 >= page_.size() || !page_.same_clause(next, next + 1);
  if (!ends) return false;
  if (page_.same_clause(next - 1, next)) return true;
  const std::size_t from = page_.token(next - 1).end;
  const std::string_view between = page_.text().substr(from, page_.token(next).begin - from);
  return between.find_first_of(".;!?,\n|/") == std::string_view::npos;
}

// "ABS lamp off", "battery light goes out after start": the end of such words, or `next`.
std::size_t Denials::lamp_goes_out(std::size_t next) const {
  // "brake light on the dash stays off"
  std::size_t lamp = next - 1;
  while (lamp > 0 && says_where_lamp(page_.word(lamp))) --lamp;
  if (!page_.same_clause(next, lamp) || !names_lamp(page_.token(lamp))) return next;
  std::size_t from = next;
  while (page_.same_clause(from + 1, next) && says_where_lamp(page_.word(from))) ++from;
  std::size_t state = from;
  while (page_.same_clause(state, next) && state < from + 2 && stays(page_.word(state))) ++state;
  for (const char* well : {"off", "ok", "okay", "fine", "normal", "unlit", "dark"}) {
    if (page_.same_clause(state, next) && page_.word(state) == well) return state + 1;
  }
  std::size_t out = from;
  while (page_.same_clause(out, next) && out < from + 2 && goes(page_.word(out))) ++out;
  const bool is_out = page_.same_clause(out, next) && page_.word(out) == "out";
  return is_out ? out + 1 : next;
}

// "says it pulls left, but I drove it and it doesn't": a little further on a clause, or what an
// "and" or "but" begins, says nothing but that it does not. Another finding between takes it.
bool Denials::taken_back(std::size_t next) {
  for (std::size_t i = next; i + 2 < page_.size() && i < next + kTakenBackReach; ++i) {
    if (page_.is_claimed(i)) return false;
    const std::string& word = page_.word(i);
    if (word != "it" && word != "they" && word != "she" && word != "he") continue;
    const bool begins = !page_.same_clause(i - 1, i) || page_.word(i - 1) == "and" ||
                        page_.word(i - 1) == "but" || page_.word(i - 1) == "though";
    const std::string& verb = page_.word(i + 1);
    const bool does = verb == "does" || verb == "did" || verb == "do" || verb == "is" ||
                      verb == "was" || verb == "has";
    const bool is_not = page_.word(i + 2) == "not" && page_.same_clause(i, i + 2);
    if (!begins || !does || !is_not || page_.same_clause(i + 2, i + 3)) continue;
    page_.claim({i, i + 3});
    return true;
  }
  return false;
}

// "no crank / wrong / it cranks", "No smell? Wrong, there is one": the opposite is so.
bool Denials::is_called_wrong(std::size_t next) {
  std::size_t i = next;
  const bool is_stroke = i < page_.size() && page_.text()[page_.token(i).begin] == '/';
  if (is_stroke) ++i;
  if (i >= page_.size() || page_.is_claimed(i)) return false;
  const std::string& word = page_.word(i);
  const bool is_wrong =
      word == "wrong" || word == "untrue" || word == "incorrect" || word == "rubbish";
  const bool ends = !page_.same_clause(i, i + 1) || page_.text()[page_.token(i).end] == '/';
  const bool parted = i > next || !page_.same_clause(next - 1, next);
  if (!is_wrong || !ends || !parted) return false;
  page_.claim(i);
  return true;
}

// "immobiliser ok", "cruise fine now": a clause that says nothing but that all is well with it.
bool Denials::is_said_well(TokenRange finding) {
  const std::size_t i = finding.last;
  const bool begins = finding.first == 0 || !page_.same_clause(finding.first - 1, finding.first);
  if (!begins || !page_.same_clause(i, finding.first) || page_.is_claimed(i)) return false;
  const std::string& word = page_.word(i);
  const bool is_well = word == "ok" || word == "okay" || word == "fine";
  // "central locking ok?" asks.
  const std::size_t behind = page_.token(i).end;
  const bool is_asked = behind < page_.text().size() && page_.text()[behind] == '?';
  const bool ends = !is_asked && (!page_.same_clause(i + 1, i) || page_.word(i + 1) == "now");
  if (is_well && ends) page_.claim(i);
  return is_well && ends;
}

// "smoke: none", "whistle not heard", "the lamp is no longer on".
bool Denials::by_word_after(std::size_t next) {
  if (next >= page_.size() || page_.is_claimed(next)) return false;
  if (const std::size_t end = lamp_goes_out(next); end > next) {
    page_.claim({next, end});
    return true;
  }
  // "screen mists up? No": words that say nothing are no part of the finding.
  std::size_t answer = next;
  while (page_.same_clause(answer, next - 1) && says_nothing(page_.word(answer))) ++answer;
  if (answer < page_.size() && !page_.is_claimed(answer)) {
    const bool is_none = page_.word(answer) == "none" && page_.same_clause(answer - 1, answer);
    if (is_none || stands_alone_as_no(answer) || answers_question(answer)) {
      page_.claim(answer);
      return true;
    }
  }
  if (const std::size_t no = answer_to_question(next); no > next) {
    page_.claim({next, no + 1});
    return true;
  }
  std::size_t i = next;
  while (page_.same_clause(i, next) && says_nothing(page_.word(i))) ++i;
  if (!page_.same_clause(i, next) || !page_.same_clause(next - 1, next)) return false;
  // "has gone to a scream" has not gone.
  const bool goes_on = page_.same_clause(i + 1, i) && page_.word(i + 1) == "to";
  if (says_absent(page_.word(i)) && !goes_on && !page_.is_claimed(i)) {
    page_.claim(i);
    return true;
  }
  const auto follows = [&](std::string_view first, std::string_view second) {
    return page_.word(i) == first && page_.same_clause(i + 1, i) && page_.word(i + 1) == second;
  };
  if (follows("went", "away") || follows("gone", "away") || follows("ruled", "out")) {
    page_.claim({i, i + 2});
    return true;
  }
  if (!is_negation(page_.word(i)) || page_.is_claimed(i)) return false;
  return by_negation_after(next, i);
}

// "not heard", "no longer there", "several modules silent: no"; the negation stands at i.
bool Denials::by_negation_after(std::size_t next, std::size_t i) {
  // "loses water, no visible leak" denies the leak; "no longer there" what stands before.
  const bool is_no = page_.word(i) == "no";
  if (is_no && i == next && !page_.same_clause(i + 1, i)) {
    page_.claim(i);
    return true;
  }
  // "clutch slips no more"
  const bool ends_there = !page_.same_clause(i + 2, next) || page_.word(i + 2) == "now";
  if (is_no && page_.same_clause(i + 1, next) && page_.word(i + 1) == "more" && ends_there) {
    page_.claim({i, i + 2});
    return true;
  }
  if (is_no && !(page_.same_clause(i + 1, next) && page_.word(i + 1) == "longer")) return false;
  std::size_t noticed = i + 1;
  const auto passes = [&](std::size_t at) {
    return page_.same_clause(at, next) &&
           (page_.word(at) == "longer" || page_.word(at) == "been" || page_.word(at) == "even");
  };
  while (passes(noticed)) ++noticed;
  const bool here = page_.same_clause(noticed, next);
  // "noise of gearbox not have", as other languages put it
  const bool had = here && page_.word(noticed) == "have" && !page_.same_clause(noticed + 1, next);
  const bool denied = had || (here && is_noticed(page_.word(noticed)));
  if (denied) page_.claim({i, noticed + 1});
  return denied;
}

// "no smoke, [noise] or leak": the finding opens a clause right after one that was denied.
bool Denials::by_list(TokenRange finding) const {
  std::size_t denied_end = 0;
  for (const std::size_t end : denied_ends_) {
    if (end <= finding.first) denied_end = std::max(denied_end, end);
  }
  if (denied_end == 0) return false;
  bool or_between = false;
  for (std::size_t i = denied_end; i < finding.first; ++i) {
    const std::string& word = page_.word(i);
    const bool passes = is_stop_word(word) || says_position(word) || word == "nor";
    if (!passes || ends_negation(word)) return false;
    or_between = or_between || word == "or" || word == "nor";
  }
  if (or_between && page_.same_clause(denied_end - 1, finding.first)) return true;
  return parted_by_comma(page_, finding.first - 1, finding.first) && list_ends_in_or(finding.last);
}

bool Denials::list_ends_in_or(std::size_t at) const {
  for (std::size_t i = at; i < page_.size() && i < at + kLongestList; ++i) {
    const std::string& word = page_.word(i);
    if (word == "or" || word == "nor") return true;
    const bool same = page_.same_clause(i - 1, i) || parted_by_comma(page_, i - 1, i);
    if (!same || is_negation(word) || ends_negation(word)) return false;
  }
  return false;
}

bool is_denied_at(const NotePage& page, std::size_t at) {
  for (std::size_t i = at; i > 0 && page.same_clause(i - 1, at); --i) {
    const std::string& word = page.word(i - 1);
    // "and no, the lamp is on"
    if (word == "no" && begins_statement(page.word(i))) return false;
    if (is_negation(word)) return !page.is_claimed(i - 1);
    if (!is_stop_word(word) || word == "just" || ends_negation(word)) return false;
  }
  return false;
}

}  // namespace shoplore
