#include "indexer/check_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

#include "indexer/check_ranges.hpp"
#include "indexer/note_words.hpp"
#include "indexer/reading_reader.hpp"
#include "indexer/text.hpp"
#include "indexer/text_scan.hpp"
#include "indexer/told_scans.hpp"
#include "indexer/value_clauses.hpp"
#include "indexer/verdict_words.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kReadingReach = 5;  // free words between a check and its reading

class PageChecks {
 public:
  PageChecks(NotePage& page, const Vocabulary& vocabulary, const CheckReader& reader)
      : page_(page),
        vocabulary_(vocabulary),
        reader_(reader),
        is_reading_(page.size(), 0),
        in_phrase_(page.size(), 0),
        search_(page, in_phrase_, is_reading_) {
    for (std::size_t i = 0; i < page.items().size(); ++i) {
      if (page.items()[i].kind == ItemKind::kReading) readings_.push_back(i);
      if (page.items()[i].kind == ItemKind::kCheck) read_.insert(page.items()[i].id);
    }
    for (const std::size_t i : readings_) mark(is_reading_, page.tokens_at(page.items()[i].span));
  }

  void read() {
    const auto matches = page_.matches(
        {EntryKind::kSymptom, EntryKind::kWorkSign, EntryKind::kCheck, EntryKind::kComponent});
    for (const PhraseMatch& match : matches) {
      if (match.kind != EntryKind::kComponent) mark(in_phrase_, {match.first, match.last});
    }
    for (const PhraseMatch& match : matches) {
      if (match.kind == EntryKind::kCheck) read_check(match);
    }
    const auto told =
        components_told(vocabulary_, page_.matches({EntryKind::kSymptom, EntryKind::kCheck}));
    for (PhraseMatch match : matches) {
      if (match.kind != EntryKind::kComponent) continue;
      name_bare_part(match, told);
      read_part(match);
    }
  }

  void read_carried() {
    is_carried_ = true;
    for (const RecognisedItem& item : page_.items()) {
      const bool is_finding = item.kind == ItemKind::kSymptom || item.kind == ItemKind::kWorkSign ||
                              item.kind == ItemKind::kCheck;
      if (is_finding) mark(in_phrase_, page_.tokens_at(item.span));
    }
    for (const PhraseMatch& match : page_.loose_matches({EntryKind::kCheck})) read_check(match);
    for (const PhraseMatch& match : page_.carried_matches({EntryKind::kCheck})) read_check(match);
    for (std::size_t i = 0; i < page_.size();) {
      std::size_t end = i;
      while (page_.same_clause(end, i)) ++end;
      guess({i, end});
      i = end;
    }
  }

 private:
  static void mark(std::vector<char>& tokens, TokenRange range) {
    for (std::size_t i = range.first; i < range.last; ++i) tokens[i] = 1;
  }

  void read_check(const PhraseMatch& match) {
    auto word = search_.near(match, VerdictReach::kFar);
    const auto reading = reading_near(match, match.id);
    // "12 bar rail while cranking, hopeless", "vents ok": when or where alone is no check.
    if (needs_reading(match) && !reading) return;
    if (!word && !reading && !has_reading_behind(match)) word = search_.around(match);
    if (word || reading || is_told_scan(page_, match)) keep(match, match.id, word, reading);
  }

  bool needs_reading(const PhraseMatch& match) const {
    const std::string& word = page_.word(match.first);
    const std::size_t words = match.last - match.first;
    if (words == 1) return page_.token(match.first).stem == "vent";
    const bool is_when = word == "while" || word == "when" || word == "on" || word == "during";
    return words == 2 && is_when && page_.token(match.last - 1).stem == "crank";
  }

  // "CAN H to L 120 ohm": a reading that this check cannot take; the words after it are of another.
  bool has_reading_behind(const PhraseMatch& match) const {
    const std::size_t end = std::min(match.last + kReadingReach, page_.size());
    for (std::size_t i = match.last; i < end && page_.same_clause(i, match.first); ++i) {
      if (is_reading_[i] != 0) return true;
    }
    return false;
  }

  bool holds_a_check(TokenRange clause) const {
    return std::any_of(page_.items().begin(), page_.items().end(), [&](const auto& item) {
      return item.kind == ItemKind::kCheck &&
             page_.same_clause(page_.tokens_at(item.span).first, clause.first);
    });
  }

  // A clause of which no item was read yet, with a verdict or a reading.
  void guess(TokenRange clause) {
    std::vector<std::string> stems;
    std::vector<std::size_t> at;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (page_.is_claimed(i) || !tells_check(page_.word(i))) continue;
      stems.push_back(page_.token(i).stem);
      at.push_back(i);
    }
    if (holds_a_check(clause)) return;
    const auto guess = reader_.words().guess(stems);
    if (!guess) return;
    PhraseMatch match{EntryKind::kCheck, guess->id, at[guess->telling.front()],
                      at[guess->telling.back()] + 1};
    read_check(match);
  }

  // "no reverse. linkage tight": the gear linkage, though the noun alone mostly names another.
  void name_bare_part(PhraseMatch& match, const std::map<std::string, double>& told) const {
    const std::string name = vocabulary_.display_name(EntryKind::kComponent, match.id);
    if (match.last - match.first > 1 || words_of(name).size() < 2) return;
    if (reader_.check_of(match.id, "") == nullptr) return;
    if (auto id = reader_.bare_parts().at(page_, match.first, told)) match.id = std::move(*id);
  }

  // "pads 2 mm", "tone ring cracked"
  void read_part(const PhraseMatch& match) {
    if (page_.is_claimed(match.first) || is_guessed(match.first)) return;
    const auto word =
        search_.near(match, is_looked_at(match) ? VerdictReach::kFar : VerdictReach::kBeside);
    const auto reading = reading_near(match, "");
    const Entry* check = nullptr;
    if (reading) check = reader_.check_of(match.id, page_.items()[*reading].unit);
    if (check == nullptr && word) check = reader_.check_of(match.id, "");
    if (check == nullptr && word && is_of_circuit(*word)) {
      check = reader_.check_of(match.id, "ohm");
    }
    if (check == nullptr || read_.contains(check->id)) return;
    const bool measured = reading && can_measure(*check, page_.items()[*reading].unit);
    keep(match, check->id, word, measured ? reading : std::nullopt);
  }

  // "injector 2 open circuit": its resistance was measured.
  bool is_of_circuit(const VerdictWords& word) const {
    return page_.word(word.at.last - 1) == "circuit";
  }

  // "dealer diagnosed a bad turbo", "maybe a stuck injector": what somebody thinks was not looked
  // at.
  bool is_guessed(std::size_t at) const {
    for (std::size_t i = at; i > 0 && page_.same_clause(i - 1, at); --i) {
      if (says_guess(page_.word(i - 1))) return true;
    }
    return false;
  }

  // "looked at the cabin filter, soaked": a look is told, and its verdict may stand further off.
  bool is_looked_at(const PhraseMatch& match) const {
    constexpr std::size_t kReach = 4;
    const std::size_t first = match.first > kReach ? match.first - kReach : 0;
    for (std::size_t i = first; i < match.last + kReach && i < page_.size(); ++i) {
      if (page_.same_clause(i, match.first) && says_look(page_.word(i))) return true;
    }
    return false;
  }

  void keep(const PhraseMatch& match, const std::string& id,
            const std::optional<VerdictWords>& word, std::optional<std::size_t> reading) {
    if (!read_.insert(id).second) return;
    RecognisedItem item =
        recognised_item(ItemKind::kCheck, id, page_.span_of({match.first, match.last}));
    if (reading) {
      taken_.insert(*reading);
      name_degrees(id, *reading);
      judge_by_reading(item, page_.items()[*reading]);
    }
    if (word) judge_by_word(item, *word);
    if (!word && !reading) item.verdict = Verdict::kUnclear;
    if (match.kind == EntryKind::kComponent && item.reading_chosen.empty()) {
      item.reading_chosen = fmt::format("'{}' taken as the check: {}", words_of_match(match),
                                        vocabulary_.display_name(EntryKind::kCheck, id));
    }
    page_.claim({match.first, match.last});
    page_.keep(std::move(item));
  }

  std::string words_of_match(const PhraseMatch& match) const {
    const Span span = page_.span_of({match.first, match.last});
    return std::string(page_.text().substr(span.begin, span.end - span.begin));
  }

  // "19 degrees out of the vents": no angle.
  void name_degrees(const std::string& id, std::size_t reading) {
    const Entry* check = vocabulary_.find(EntryKind::kCheck, id);
    const bool is_angle = check == nullptr || check->unit != "C";
    if (!is_angle && page_.items()[reading].unit == "deg") page_.name_unit(reading, "C");
  }

  void judge_by_reading(RecognisedItem& item, const RecognisedItem& measured) {
    item.reading = measured.reading;
    item.unit = measured.unit;
    const Entry* check = vocabulary_.find(EntryKind::kCheck, item.id);
    const auto verdict = check == nullptr ? std::nullopt
                                          : verdict_of(*check, *measured.reading, measured.unit,
                                                       measure_of(measured));
    item.verdict = verdict.value_or(Verdict::kUnclear);
    if (!verdict) return;
    item.reading_chosen = fmt::format(
        "{}: {} is {} what is expected", vocabulary_.display_name(EntryKind::kCheck, item.id),
        measured.id, *verdict == Verdict::kPass ? "within" : "outside");
    if (check->low || check->high) item.reading_chosen += ", " + range_text(*check);
  }

  // "420 mbar below target", "-8 mbar", "difference 6 C".
  RangeOf measure_of(const RecognisedItem& measured) const {
    constexpr std::size_t kReach = 4;
    if (measured.reading->number && *measured.reading->number < 0) return RangeOf::kDifference;
    const TokenRange at = page_.tokens_at(measured.span);
    const std::size_t first = at.first > kReach ? at.first - kReach : 0;
    for (std::size_t i = first; i < at.last + kReach && i < page_.size(); ++i) {
      if (page_.same_clause(i, at.first) && says_difference(page_.word(i))) {
        return RangeOf::kDifference;
      }
    }
    return RangeOf::kValue;
  }

  void judge_by_word(RecognisedItem& item, const VerdictWords& word) {
    item.verdict = word.verdict;
    // A joint that is solid has no play; a slide that is solid does not slide.
    const bool is_solid = page_.word(word.at.first) == "solid" && item.id.ends_with("_play");
    // "level full", but "full of metal"
    const bool is_of = page_.same_clause(word.at.last, word.at.first)
                           ? page_.word(word.at.last) == "of"
                           : word.at.last - word.at.first > 1;
    const bool is_full =
        page_.word(word.at.first) == "full" && !is_of && item.id.ends_with("_level_look");
    if (is_solid || is_full) item.verdict = Verdict::kPass;
    // "leak spray: nothing" is well, "fan commanded: nothing" is not.
    const bool is_dead = page_.word(word.at.first) == "nothing" && item.id.ends_with("_command");
    if (is_dead) item.verdict = Verdict::kFail;
    item.reading_chosen.clear();
    page_.claim(word.at);
  }

  // The first reading after the check, or the last before it, in its clause, with no other finding
  // between, and in a unit that the check can measure in; position in the page's items.
  std::optional<std::size_t> reading_near(const PhraseMatch& match, std::string_view check) const {
    std::size_t words = 0, end = match.last;
    for (; page_.same_clause(end, match.first); ++end) {
      if (is_reading_[end] != 0) {
        const auto item = reading_at(end);
        const bool is_others = is_carried_ && item && taken_.contains(*item);
        if (fits(item, check) && !is_others) return worst_from(*item, end, check);
        continue;
      }
      if (in_phrase_[end] != 0) break;
      if (!is_stop_word(page_.word(end)) && ++words > kReadingReach) break;
    }
    if (const auto listed = reading_behind(match, end, check)) return listed;
    // "batt 11.9V cranking 8.2": what stands before is of something else.
    for (const std::size_t i : {match.last, match.last + 1}) {
      if (page_.same_clause(i, match.first) && is_digit(page_.word(i).front())) return std::nullopt;
    }
    words = 0;
    for (std::size_t i = match.first; i > 0 && page_.same_clause(i - 1, match.first); --i) {
      if (is_reading_[i - 1] != 0) {
        const auto item = reading_at(i - 1);
        if (fits(item, check) && !taken_.contains(*item)) return item;
        continue;
      }
      if (in_phrase_[i - 1] != 0 || ++words > kReadingReach) break;
    }
    return std::nullopt;
  }

  // "tested with refractometer, 32 %": a clause of its own behind the check's, which ends at `end`.
  std::optional<std::size_t> reading_behind(const PhraseMatch& match, std::size_t end,
                                            std::string_view check) const {
    if (check.empty() || end >= page_.size() || page_.same_clause(end, match.first) ||
        !leads_on(page_, end - 1, end)) {
      return std::nullopt;
    }
    const std::size_t last = end_of_values(page_, in_phrase_, is_reading_, end);
    for (std::size_t i = end; i < last; ++i) {
      const auto item = is_reading_[i] != 0 ? reading_at(i) : std::nullopt;
      if (fits(item, check)) return worst_from(*item, i, check);
    }
    return std::nullopt;
  }

  // "plugs: #1 0.6 ohm, #2 0.7 ohm, #3 OL": of several values in a row the first that is out of
  // range tells how the check went; the first of all when none is.
  std::size_t worst_from(std::size_t first, std::size_t token, std::string_view check) const {
    const Entry* entry = vocabulary_.find(EntryKind::kCheck, check);
    if (entry == nullptr) return first;
    for (std::size_t i = token; i < page_.size(); ++i) {
      // "rest 12.5 V, 12.2 V while cranking": the next clause is of something else.
      const bool begins = i > token && !page_.same_clause(i - 1, i);
      if (begins && holds_phrase(i)) break;
      if (is_reading_[i] == 0) {
        const bool passes =
            goes_with_values(page_.word(i)) || says_fail(page_.word(i)) || says_pass(page_.word(i));
        if (in_phrase_[i] != 0 || !passes) break;
        continue;
      }
      const auto item = reading_at(i);
      if (!fits(item, check)) break;
      const RecognisedItem& read = page_.items()[*item];
      const auto verdict = verdict_of(*entry, *read.reading, read.unit, measure_of(read));
      if (verdict == Verdict::kFail) return *item;
    }
    return first;
  }

  bool holds_phrase(std::size_t clause) const {
    for (std::size_t i = clause; page_.same_clause(i, clause); ++i) {
      if (in_phrase_[i] != 0) return true;
    }
    return false;
  }

  bool fits(std::optional<std::size_t> item, std::string_view check) const {
    if (!item) return false;
    const Entry* entry = vocabulary_.find(EntryKind::kCheck, check);
    const std::string& unit = page_.items()[*item].unit;
    // OL fits whatever conducts; a check without a unit takes no number.
    return entry == nullptr || unit.empty() || can_measure(*entry, unit);
  }

  std::optional<std::size_t> reading_at(std::size_t token) const {
    for (const std::size_t item : readings_) {
      const TokenRange at = page_.tokens_at(page_.items()[item].span);
      if (at.first <= token && token < at.last) return item;
    }
    return std::nullopt;
  }

  NotePage& page_;
  const Vocabulary& vocabulary_;
  const CheckReader& reader_;
  std::vector<std::size_t> readings_;         // positions in the page's items
  std::vector<char> is_reading_, in_phrase_;  // by token
  VerdictSearch search_;
  std::set<std::string> read_;   // checks already read
  bool is_carried_ = false;      // surer checks have their readings already
  std::set<std::size_t> taken_;  // readings that a check has, by position in the page's items
};

}  // namespace

CheckReader::CheckReader(const Vocabulary& vocabulary, const BareParts& bare_parts)
    : vocabulary_(vocabulary), bare_parts_(bare_parts), words_(vocabulary, EntryKind::kCheck) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kCheck)) {
    const bool is_offered = entry.retired.empty() && entry.alias_of.empty();
    if (is_offered && !entry.components.empty()) {
      by_component_[entry.components.front()].push_back(&entry);
    }
  }
}

void CheckReader::read(NotePage& page) const {
  PageChecks(page, vocabulary_, *this).read();
}

void CheckReader::read_carried(NotePage& page) const {
  PageChecks(page, vocabulary_, *this).read_carried();
}

const Entry* CheckReader::check_of(std::string_view component, std::string_view unit) const {
  const auto checks = by_component_.find(component);
  if (checks == by_component_.end()) return nullptr;
  const Entry* found = nullptr;
  for (const Entry* check : checks->second) {
    if (!can_measure(*check, unit)) continue;
    if (found != nullptr) return nullptr;
    found = check;
  }
  return found;
}

}  // namespace shoplore
