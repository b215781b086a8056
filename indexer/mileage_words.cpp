#include "indexer/mileage_words.hpp"

#include <array>
#include <string>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"
#include "indexer/text_scan.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

// What is said of a stretch driven, a countdown or a consumption stays below this; a mileage
// beside the same word ("over 90,000 km", "92k km, back again") is mostly above.
constexpr double kLongestStretch = 30'000;

struct WordBefore {
  std::string word;
  std::size_t begin = 0;
};

// The word before, over "~" and the stop of "approx.".
WordBefore word_ahead(std::string_view text, std::size_t end) {
  while (end > 0 && (text[end - 1] == ' ' || text[end - 1] == '~')) --end;
  const bool stop = end > 1 && text[end - 1] == '.' && is_word_char(text[end - 2]);
  const std::string_view word = word_before(text, stop ? end - 1 : end);
  if (word.empty()) return {"", end};
  WordBefore ahead{lower_case(word), static_cast<std::size_t>(word.data() - text.data())};
  const bool shortened = ahead.word == "approx" || ahead.word == "ca";
  return stop && !shortened ? WordBefore{"", end} : ahead;
}

bool is_label(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"mileage", "odo", "odometer", "clock", "clocked", "shows", "showing", "milage", "speedo"});
  return holds(words, word);
}

bool stands_after_label(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"is", "of", "at", "reads", "reading", "says", "shows", "showing", "approx", "about",
       "around", "now", "currently", "was", "just", "under", "over", "nearly", "ca"});
  return holds(words, word);
}

// "it's done 110,000", "has covered 85,000"; not "tyres have done 30k".
bool is_done_by_vehicle(std::string_view text, const WordBefore& done) {
  if (done.word != "done" && done.word != "covered") return false;
  constexpr auto words =
      std::to_array<std::string_view>({"s", "its", "has", "only", "just", "car", "van", "had"});
  return holds(words, word_ahead(text, done.begin).word);
}

bool is_end_of_clause(std::string_view text, std::size_t end) {
  const std::size_t next = skip_spaces(text, end);
  return next >= text.size() || !is_word_char(text[next]);
}

std::size_t after_word(std::string_view text, std::size_t end) {
  return skip_spaces(text, end) + word_after(text, end).size();
}

bool is_other_by_word_before(const Distance& distance) {
  const WordBefore ahead = word_ahead(distance.text, distance.begin);
  constexpr auto always =
      std::to_array<std::string_view>({"every", "after", "for", "within", "since", "per", "another",
                                       "countdown", "lasted", "lasts", "towed", "interval"});
  constexpr auto of_stretches =
      std::to_array<std::string_view>({"in", "over", "by", "only", "another", "drove", "driven",
                                       "range", "next", "first", "last", "service"});
  if (holds(always, ahead.word)) return true;
  if (distance.value < kLongestStretch && holds(of_stretches, ahead.word)) return true;
  const std::string earlier = word_ahead(distance.text, ahead.begin).word;
  if (ahead.word == "done" && earlier == "have") return true;
  // "clutch replaced at 90k"
  return ahead.word == "at" && comes_before_readings(earlier);
}

bool is_other_by_word_after(const Distance& distance) {
  const std::string after = word_after(distance.text, distance.end);
  const std::size_t end = after_word(distance.text, distance.end);
  constexpr auto always = std::to_array<std::string_view>(
      {"ago", "later", "since", "earlier", "interval", "intervals", "per", "overdue", "remaining",
       "yearly", "countdown", "apart"});
  // "400 km range"; of a vehicle, "120,000 km service light on"
  constexpr auto of_stretches = std::to_array<std::string_view>({"old", "range"});
  constexpr auto lamps =
      std::to_array<std::string_view>({"light", "lamp", "indicator", "message", "symbol"});
  if (holds(always, after)) return true;
  if (distance.value < kLongestStretch && holds(of_stretches, after)) return true;
  const std::string then = word_after(distance.text, end);
  if (after == "service") return !holds(lamps, then);
  if (after == "a" && (then == "year" || then == "month" || then == "week")) return true;
  if (after == "to" && (then == "go" || then == "run")) return true;
  if (distance.value >= kLongestStretch) return false;
  // "1500 km on", "lost again 2000 km after that"
  if (after == "on") return is_end_of_clause(distance.text, end);
  return after == "left" || after == "back" || after == "after" || after == "until";
}

}  // namespace

std::size_t mileage_label_begin(const Distance& distance) {
  constexpr int kMostBetween = 3;
  WordBefore ahead = word_ahead(distance.text, distance.begin);
  if (is_done_by_vehicle(distance.text, ahead)) return ahead.begin;
  for (int i = 0; i < kMostBetween && !is_label(ahead.word); ++i) {
    if (!stands_after_label(ahead.word)) return distance.begin;
    ahead = word_ahead(distance.text, ahead.begin);
  }
  if (!is_label(ahead.word)) return distance.begin;
  // "odo shows": the whole of it
  const WordBefore earlier = word_ahead(distance.text, ahead.begin);
  const bool longer = stands_after_label(ahead.word) && is_label(earlier.word);
  return longer ? earlier.begin : ahead.begin;
}

std::size_t mileage_tail_end(const Distance& distance) {
  constexpr auto things = std::to_array<std::string_view>(
      {"it", "clock", "her", "him", "odo", "odometer", "speedo", "dial", "counter"});
  const std::string first = word_after(distance.text, distance.end);
  std::size_t end = after_word(distance.text, distance.end);
  if (first == "up" && is_end_of_clause(distance.text, end)) return end;
  if (first != "on") return distance.end;
  if (word_after(distance.text, end) == "the") end = after_word(distance.text, end);
  return holds(things, word_after(distance.text, end)) ? after_word(distance.text, end)
                                                       : distance.end;
}

bool is_other_distance(const Distance& distance) {
  if (byte_at(distance.text, distance.end) == '/') return true;
  // "1 l / 1000 km", but "Fell / 92,000 km / diesel"
  std::size_t before = distance.begin;
  while (before > 0 && distance.text[before - 1] == ' ') --before;
  const bool is_share = before > 0 && distance.text[before - 1] == '/';
  if (is_share && (distance.value == 1'000 || distance.value == 10'000)) return true;
  return is_other_by_word_before(distance) || is_other_by_word_after(distance);
}

bool counts_other_things(const Distance& distance) {
  constexpr auto before = std::to_array<std::string_view>(
      {"resistance", "resistor", "measured", "cost", "costs", "reg", "ohms", "gap", "gaps",
       "clearance", "clearances", "runout", "play", "lift", "of"});
  constexpr auto after = std::to_array<std::string_view>(
      {"cycles", "hours", "hrs", "starts", "pounds", "quid", "euro", "euros", "resistor", "gap",
       "clearance", "clearances", "runout", "play", "out", "lift", "oversize", "undersize"});
  const std::string next = word_after(distance.text, distance.end);
  return is_reading_unit(next) || holds(after, next) ||
         holds(before, word_ahead(distance.text, distance.begin).word);
}

}  // namespace shoplore
