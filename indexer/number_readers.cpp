// Small hand-written scanners: the patterns are short, and a note of any length costs linear time.
#include "indexer/number_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>

#include "indexer/mileage_words.hpp"
#include "indexer/note_words.hpp"
#include "indexer/spelled_numbers.hpp"
#include "indexer/text.hpp"
#include "indexer/text_scan.hpp"

namespace shoplore {
namespace {

int latest_model_year() {
  const std::chrono::year_month_day now{today().days};
  return static_cast<int>(now.year()) + 1;
}

struct Number {
  double value = 0;
  std::size_t end = 0;  // after the digits, groups and k
  bool thousands = false;
  double least = 10'000;  // below it, no mileage without a unit
};

// "k", "thousand" and "thou" behind the digits that end at number.end.
void take_thousands(std::string_view text, Number& number) {
  const std::string word = word_after(text, number.end);
  if (word != "k" && word != "thousand" && word != "thou") return;
  // Thousandths of an inch are "thou" too, and few.
  if (word == "thou") number.least = 30'000;
  number.value *= 1'000;
  number.thousands = true;
  number.end = skip_spaces(text, number.end) + word.size();
}

// "88.5k", "118,4 tkm"
bool has_decimal_of_thousands(std::string_view text, std::size_t i) {
  const bool marked = byte_at(text, i) == '.' || byte_at(text, i) == ',';
  if (!marked || !is_digit(byte_at(text, i + 1))) return false;
  const std::string word = word_after(text, i + 2);
  return word == "k" || word == "tkm" || word == "thousand" || word == "thou";
}

// Digits with groups of three ("142,000", "142 000") or a k ("142k", "88.5k").
Number read_number(std::string_view text, std::size_t begin) {
  std::string digits;
  std::size_t i = begin;
  while (is_digit(byte_at(text, i)) && digits.size() < 8) digits += text[i++];
  const bool may_be_grouped = digits.size() <= 3;
  while (may_be_grouped && i < text.size() &&
         std::string_view(",. '").find(byte_at(text, i)) != std::string_view::npos &&
         is_digit(byte_at(text, i + 1)) && is_digit(byte_at(text, i + 2)) &&
         is_digit(byte_at(text, i + 3)) && !is_digit(byte_at(text, i + 4)) && digits.size() <= 6) {
    digits += text.substr(i + 1, 3);
    i += 4;
  }
  if (has_decimal_of_thousands(text, i)) {
    digits += '.';
    digits += text[i + 1];
    i += 2;
  }
  Number number{std::stod(digits), i};
  take_thousands(text, number);
  return number;
}

struct Unit {
  std::optional<DistanceUnit> unit;
  std::size_t end = 0;
  double factor = 1;
};

Unit read_unit(std::string_view text, std::size_t begin) {
  std::size_t i = skip_spaces(text, begin);
  const std::size_t word = i;
  while (is_word_char(byte_at(text, i))) ++i;
  const std::string name = lower_case(text.substr(word, i - word));
  for (const char* km :
       {"km", "kms", "kilometres", "kilometers", "kilometer", "kilometre", "klicks"}) {
    if (name == km) return {DistanceUnit::kKilometres, i};
  }
  if (name == "tkm") return {DistanceUnit::kKilometres, i, 1'000};
  for (const char* mile : {"mi", "mile", "miles", "mls"}) {
    if (name == mile) return {DistanceUnit::kMiles, i};
  }
  return {};
}

// The mileage whose digits begin here; its span ends at the number when it is none.
struct MileageReading {
  std::optional<RecognisedItem> item;
  std::size_t end = 0;
};

Unit unit_before(std::string_view text, std::string_view label) {
  if (label.empty()) return {};
  return read_unit(text, static_cast<std::size_t>(label.data() - text.data()));
}

// In digits or in words; nothing where neither begins.
std::optional<Number> number_at(std::string_view text, std::size_t i) {
  if (!begins_word(text, i)) return std::nullopt;
  if (is_digit(text[i])) return read_number(text, i);
  const auto spelled = spelled_number_at(text, i);
  return spelled ? std::optional(Number{spelled->value, spelled->end}) : std::nullopt;
}

MileageReading read_mileage_at(std::string_view text, std::size_t i, Number number,
                               DistanceUnit default_unit) {
  Unit unit = read_unit(text, number.end);
  // "km 213 000"
  const std::string_view word = word_before(text, i);
  const Unit before = unit_before(text, word);
  if (!unit.unit && before.unit && number.value >= 1'000) unit = {before.unit, number.end};
  number.value *= unit.factor;
  const std::size_t end = unit.unit ? unit.end : number.end;
  const Distance distance{text, i, end, number.value};
  const std::size_t begin = before.unit ? static_cast<std::size_t>(word.data() - text.data())
                                        : mileage_label_begin(distance);
  const bool labelled = begin < i;
  const std::size_t tail = mileage_tail_end(distance);
  const bool said = unit.unit || labelled || tail > end;
  const double least = unit.unit || labelled ? 1'000 : number.least;
  const bool is_mileage = (said || number.thousands) && number.value >= least &&
                          number.value <= 2'000'000 &&
                          (unit.unit || labelled || !counts_other_things(distance)) &&
                          (tail > end || !is_other_distance(distance));
  if (!is_mileage) return {std::nullopt, number.end};
  const DistanceUnit taken = unit.unit.value_or(default_unit);
  RecognisedItem item;
  item.kind = ItemKind::kMileage;
  item.mileage_km = taken == DistanceUnit::kMiles ? kilometres_from_miles(number.value)
                                                  : Kilometres{std::llround(number.value)};
  item.id = std::to_string(item.mileage_km->value);
  item.span = {begin, tail};
  if (!unit.unit) {
    item.reading_chosen = fmt::format("'{}' taken as {}", text.substr(i, number.end - i),
                                      taken == DistanceUnit::kMiles ? "miles" : "kilometres");
  }
  return {std::move(item), tail};
}

// Whether the number in [begin, end) belongs to a date, a decimal, a range or a part number.
bool is_part_of_more(std::string_view text, std::size_t begin, std::size_t end) {
  constexpr std::string_view kJoins = ".,-/";
  const bool before = begin > 1 && kJoins.find(text[begin - 1]) != std::string_view::npos &&
                      is_word_char(text[begin - 2]);
  const bool after = end + 1 < text.size() && kJoins.find(text[end]) != std::string_view::npos &&
                     is_digit(text[end + 1]);
  return before || after;
}

// "MY16": where "my" begins, or `begin`.
std::size_t model_year_mark(std::string_view text, std::size_t begin) {
  if (begin < 2 || lower_case(text.substr(begin - 2, 2)) != "my") return begin;
  return begins_word(text, begin - 2) ? begin - 2 : begin;
}

// "15 plate", "63-plate": the age mark of a number plate, from March the year's last two digits,
// from September these and fifty more; nothing without the word.
std::optional<int> year_of_plate(std::string_view text, int mark, std::size_t end) {
  const std::size_t word = byte_at(text, end) == '-' ? end + 1 : end;
  if (word_after(text, word) != "plate") return std::nullopt;
  return 2000 + (mark > 50 ? mark - 50 : mark);
}

// "from 2019", "a Fell of 2011"; not "at 2000", "in 2019", "clock spring replaced here 2021".
bool may_stand_before_year(std::string_view word) {
  const bool is_of_work = word == "here" || word == "elsewhere" || word == "us";
  return !is_of_work && (word == "from" || !comes_before_readings(word));
}

// "two thousand and seventeen"
std::optional<RecognisedItem> read_spelled_year_at(std::string_view text, std::size_t begin) {
  const auto year = begins_word(text, begin) ? spelled_year_at(text, begin) : std::nullopt;
  if (!year || year->value < 1980 || year->value > latest_model_year()) return std::nullopt;
  const std::string after = word_after(text, year->end);
  if (is_reading_unit(after) || is_since_unit(after)) return std::nullopt;
  if (!may_stand_before_year(lower_case(word_before(text, begin)))) return std::nullopt;
  RecognisedItem item;
  item.kind = ItemKind::kModelYear;
  item.id = std::to_string(static_cast<int>(year->value));
  item.span = {begin, year->end};
  return item;
}

std::optional<RecognisedItem> read_year_at(std::string_view text, std::size_t begin,
                                           std::size_t end) {
  constexpr std::string_view kPrintersQuote = "\u2019";
  const int latest = latest_model_year();
  const int value = std::stoi(std::string(text.substr(begin, end - begin)));
  std::size_t quote = begin;
  if (begin > 0 && text[begin - 1] == '\'') quote = begin - 1;
  if (text.substr(0, begin).ends_with(kPrintersQuote)) quote = begin - kPrintersQuote.size();
  if (const std::size_t my = model_year_mark(text, begin); my < begin) quote = my;
  const auto plate = end - begin == 2 ? year_of_plate(text, value, end) : std::nullopt;
  const bool is_short = plate || (end - begin == 2 && quote < begin && begins_word(text, quote));
  const int written = is_short ? (value > latest % 100 ? 1900 : 2000) + value : value;
  const int year = plate.value_or(written);
  if ((end - begin != 4 && !is_short) || year < 1980 || year > latest) return std::nullopt;
  if (is_part_of_more(text, begin, end) || is_reading_unit(word_after(text, end)) ||
      read_unit(text, end).unit || !may_stand_before_year(lower_case(word_before(text, begin)))) {
    return std::nullopt;
  }
  RecognisedItem item;
  item.kind = ItemKind::kModelYear;
  item.id = std::to_string(year);
  item.span = {is_short ? quote : begin, end};
  if (quote < begin) item.span.begin = quote;
  if (is_short) item.reading_chosen = fmt::format("'{} taken as {}", text.substr(begin, 2), year);
  return item;
}

}  // namespace

std::vector<RecognisedItem> read_mileages(std::string_view text, DistanceUnit default_unit) {
  std::optional<RecognisedItem> longest;
  bool several = false;
  for (std::size_t i = 0; i < text.size();) {
    const auto number = number_at(text, i);
    if (!number) {
      ++i;
      continue;
    }
    MileageReading reading = read_mileage_at(text, i, *number, default_unit);
    i = reading.end;
    if (!reading.item) continue;
    several = several || longest;
    const bool longer = !longest || reading.item->mileage_km->value > longest->mileage_km->value;
    if (longer) longest = std::move(reading.item);
  }
  if (!longest) return {};
  if (several) {
    longest->reading_chosen += longest->reading_chosen.empty() ? "" : "; ";
    longest->reading_chosen += "the longest of several distances";
  }
  return {std::move(*longest)};
}

std::vector<RecognisedItem> read_model_years(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!is_digit(text[i])) {
      if (auto item = read_spelled_year_at(text, i)) return {std::move(*item)};
      continue;
    }
    const std::size_t begin = i;
    while (is_digit(byte_at(text, i))) ++i;
    // A printer's quote before '16 is no ASCII, yet no letter either.
    const bool begins = begins_word(text, begin) || text.substr(0, begin).ends_with("\u2019") ||
                        model_year_mark(text, begin) < begin;
    if (!begins || is_word_char(byte_at(text, i)) || i - begin > 4) continue;
    if (auto item = read_year_at(text, begin, i)) return {std::move(*item)};
  }
  return {};
}

}  // namespace shoplore
