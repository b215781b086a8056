// A hand-written scanner over bytes: a number, then the longest unit that stands there alone.
#include "indexer/reading_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "indexer/note_words.hpp"
#include "indexer/spelled_numbers.hpp"
#include "indexer/text.hpp"
#include "indexer/text_scan.hpp"

namespace shoplore {
namespace {

// What stands after the number may be apart from it by a space, or must be written onto it: "2 a"
// may be an article, "2a" and "2 A" are amperes. A small letter may also be another unit: milliohms
// are no megohms.
enum class Apart { kMayBe, kOnlyInCapitals, kNeverSmall };

struct Spelling {
  std::string_view written;  // lower case
  std::string_view symbol;
  Apart apart = Apart::kMayBe;
};

// Longest first where one begins another.
constexpr auto kSpellings = std::to_array<Spelling>({
    {"millivolts", "mV"},
    {"millivolt", "mV"},
    {"volts", "V"},
    {"volt", "V"},
    {"mv", "mV"},
    {"v dc", "V"},
    {"vdc", "V"},
    {"vac", "V"},
    {"v", "V"},
    {"milliamperes", "mA"},
    {"milliamps", "mA"},
    {"milliamp", "mA"},
    {"amperes", "A"},
    {"ampere", "A"},
    {"amps", "A"},
    {"amp", "A"},
    {"ma", "mA"},
    {"a", "A", Apart::kOnlyInCapitals},
    {"kilo ohms", "kohm"},
    {"kilo ohm", "kohm"},
    {"kilohms", "kohm"},
    {"kilohm", "kohm"},
    {"kiloohms", "kohm"},
    {"kiloohm", "kohm"},
    {"kohms", "kohm"},
    {"kohm", "kohm"},
    {"k ohms", "kohm"},
    {"k ohm", "kohm"},
    {"k\u03a9", "kohm"},
    {"k\u2126", "kohm"},
    {"m\u03a9", "Mohm", Apart::kNeverSmall},
    {"meg ohms", "Mohm"},
    {"meg ohm", "Mohm"},
    {"megaohms", "Mohm"},
    {"megaohm", "Mohm"},
    {"meg", "Mohm"},
    {"megohms", "Mohm"},
    {"megohm", "Mohm"},
    {"mohm", "Mohm"},
    {"ohms", "ohm"},
    {"ohm", "ohm"},
    {"\u03a9", "ohm"},
    {"\u2126", "ohm"},
    {"mbar", "mbar"},
    {"millibar", "mbar"},
    {"bars", "bar"},
    {"bar", "bar"},
    {"psi", "psi"},
    {"kilopascals", "kPa"},
    {"kilopascal", "kPa"},
    {"kpa", "kPa"},
    {"mpa", "MPa"},
    {"hpa", "mbar"},
    {"degrees celsius", "C"},
    {"deg celsius", "C"},
    {"celsius", "C"},
    {"degrees c", "C"},
    {"degrees", "deg"},
    {"deg c", "C"},
    {"deg. c", "C"},
    {"degc", "C"},
    {"\u00b0c", "C"},
    {"\u00b0 c", "C"},
    {"\u00b0", "deg"},
    {"deg", "deg"},
    {"c", "C", Apart::kOnlyInCapitals},
    {"%", "%"},
    {"percent", "%"},
    {"per cent", "%"},
    {"pct", "%"},
    {"millimetres", "mm"},
    {"millimetre", "mm"},
    {"millimeters", "mm"},
    {"millimeter", "mm"},
    {"mm", "mm"},
    {"rpm", "rpm"},
    {"revs", "rpm"},
    {"r/min", "rpm"},
    {"g/s", "g/s"},
    {"grams per second", "g/s"},
    {"grams a second", "g/s"},
    {"khz", "kHz"},
    {"hz", "Hz"},
    {"milliseconds", "ms"},
    {"ms", "ms"},
    {"nm", "Nm"},
    {"newton metres", "Nm"},
    {"km/h", "km/h"},
    {"kmh", "km/h"},
    {"kph", "km/h"},
    {"l/h", "l/h"},
    {"ml", "ml"},
});

// Symbols of one quantity, with what one of each is of the first.
struct Scale {
  std::string_view symbol, base;
  double factor = 1;
};
constexpr auto kScales = std::to_array<Scale>({{"V", "V", 1},
                                               {"mV", "V", 1e-3},
                                               {"A", "A", 1},
                                               {"mA", "A", 1e-3},
                                               {"ohm", "ohm", 1},
                                               {"kohm", "ohm", 1e3},
                                               {"Mohm", "ohm", 1e6},
                                               {"kPa", "kPa", 1},
                                               {"bar", "kPa", 100},
                                               {"mbar", "kPa", 0.1},
                                               {"MPa", "kPa", 1000},
                                               {"psi", "kPa", 6.894757},
                                               {"Hz", "Hz", 1},
                                               {"kHz", "Hz", 1e3}});

struct Value {
  double number = 0;
  std::size_t begin = 0, end = 0;
};

struct Unit {
  std::string_view symbol;
  std::size_t end = 0;  // 0: none
};

std::size_t end_of_digits(std::string_view text, std::size_t i) {
  while (is_digit(byte_at(text, i))) ++i;
  return i;
}

// Whether the digits that begin here stand behind a bare point: ".06 mm".
bool is_bare_decimal(std::string_view text, std::size_t begin) {
  return begin > 0 && text[begin - 1] == '.' &&
         (begin == 1 || text[begin - 2] == ' ' || text[begin - 2] == '(');
}

// "starter draws 1 200 A"; "cyl 3 120 ohm" are two numbers.
bool is_spaced_group(std::string_view text, std::size_t begin, std::size_t end) {
  if (byte_at(text, end) != ' ' || end_of_digits(text, end + 1) != end + 4) return false;
  const std::string before = lower_case(word_before(text, begin));
  for (const char* counted : {"cyl", "cylinder", "no", "nr", "number", "plug", "coil", "injector",
                              "pot", "pin", "bank", "of", "on", "at", "and"}) {
    if (before == counted) return false;
  }
  return true;
}

// "1,200" and "1 200" are groups; "0,4" and "12,65" are decimals.
Value read_value(std::string_view text, std::size_t begin) {
  if (is_bare_decimal(text, begin)) {
    const std::size_t end = end_of_digits(text, begin);
    return {std::stod("0." + std::string(text.substr(begin, end - begin))), begin - 1, end};
  }
  constexpr std::size_t kMostDigits = 9;
  std::size_t i = std::min(end_of_digits(text, begin), begin + kMostDigits);
  std::string digits(text.substr(begin, i - begin));
  while (digits.size() <= 3 && digits != "0" &&
         ((byte_at(text, i) == ',' && end_of_digits(text, i + 1) == i + 4) ||
          is_spaced_group(text, begin, i))) {
    digits += text.substr(i + 1, 3);
    i += 4;
  }
  const char mark = byte_at(text, i);
  const std::size_t decimals = end_of_digits(text, i + 1);
  if ((mark == '.' || mark == ',') && decimals > i + 1 && decimals <= i + kMostDigits) {
    digits += ".";
    digits += text.substr(i + 1, decimals - i - 1);
    i = decimals;
  }
  return {std::stod(digits), begin, i};
}

char small(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool stands_at(std::string_view text, std::size_t at, std::string_view written) {
  if (at > text.size() || text.size() - at < written.size()) return false;
  return std::equal(written.begin(), written.end(), text.begin() + static_cast<std::ptrdiff_t>(at),
                    [](char a, char b) { return a == small(b); });
}

Unit read_unit(std::string_view text, std::size_t after) {
  const std::size_t begin = skip_spaces(text, after);
  for (const Spelling& spelling : kSpellings) {
    const std::size_t end = begin + spelling.written.size();
    if (!stands_at(text, begin, spelling.written)) continue;
    const bool is_word = is_word_char(spelling.written.back());
    if (is_word && is_word_char(byte_at(text, end))) continue;
    const bool is_small = text[begin] == spelling.written[0];
    if (spelling.apart == Apart::kOnlyInCapitals && begin > after && is_small) return {};
    if (spelling.apart == Apart::kNeverSmall && is_small) return {};
    return {spelling.symbol, end};
  }
  return {};
}

// "at 90 km/h", "over 3000 rpm", "above 20 C": when something happens, not what was measured.
bool says_when(std::string_view text, std::size_t begin, std::string_view symbol) {
  const bool may = symbol == "rpm" || symbol == "km/h" || symbol == "C";
  if (!may) return false;
  const std::string before = lower_case(word_before(text, begin));
  for (const char* word :
       {"at",      "over",  "above",  "past",     "around", "from",   "below", "under", "until",
        "till",    "after", "about",  "between",  "and",    "beyond", "by",    "near",  "approx",
        "roughly", "to",    "steady", "constant", "per",    "every",  "each"}) {
    if (before == word) return true;
  }
  const char sign = begin > 0 ? text[begin - 1] : '\0';
  return sign == '>' || sign == '<' || sign == '~' || sign == '@';
}

// "10-12 V", "10 to 12 V", "60..80 %": the end of a range.
bool ends_range(std::string_view text, std::size_t begin) {
  if (begin > 1 && text[begin - 1] == '-' && is_digit(text[begin - 2])) return true;
  if (begin > 1 && text[begin - 1] == '.' && text[begin - 2] == '.') return true;
  const std::string_view word = word_before(text, begin);
  const std::string before = lower_case(word);
  if (before != "to" && before != "and") return false;
  const std::string_view earlier =
      word_before(text, static_cast<std::size_t>(word.data() - text.data()));
  return !earlier.empty() && is_digit(earlier.front());
}

// Voltages that things are named by.
bool is_nominal(double number, std::string_view symbol) {
  return symbol == "V" && (number == 5 || number == 12 || number == 24 || number == 48);
}

// Where the sign of a value below zero begins, or `begin`. A terminal is called minus too, so the
// word is no sign of a voltage.
std::size_t sign_begin(std::string_view text, std::size_t begin, std::string_view symbol) {
  if (begin > 0 && text[begin - 1] == '-' && begins_word(text, begin - 1)) return begin - 1;
  const std::string_view word = word_before(text, begin);
  const bool is_sign = symbol != "V" && lower_case(word) == "minus";
  return is_sign ? static_cast<std::size_t>(word.data() - text.data()) : begin;
}

std::optional<RecognisedItem> reading_at(std::string_view text, const Value& value) {
  const Unit unit = read_unit(text, value.end);
  if (unit.end == 0 || ends_range(text, value.begin)) return std::nullopt;
  if (is_nominal(value.number, unit.symbol) && is_named_by_voltage(word_after(text, unit.end))) {
    return std::nullopt;
  }
  if (says_when(text, value.begin, unit.symbol)) return std::nullopt;
  const std::size_t sign = sign_begin(text, value.begin, unit.symbol);
  RecognisedItem item;
  item.kind = ItemKind::kReading;
  item.reading = Reading{sign < value.begin ? -value.number : value.number, ""};
  item.unit = unit.symbol;
  item.id = fmt::format("{:.10g} {}", *item.reading->number, unit.symbol);
  item.span = {sign, unit.end};
  return item;
}

// "12.1 / 12.0 / 6.4 bar": numbers joined by strokes share the unit of the last.
void add_listed_before(std::string_view text, std::size_t begin, const RecognisedItem& last,
                       std::vector<RecognisedItem>& items) {
  const std::size_t place = items.size();
  while (true) {
    std::size_t end = begin;
    while (end > 0 && text[end - 1] == ' ') --end;
    if (end == 0 || text[end - 1] != '/') return;
    do --end;
    while (end > 0 && text[end - 1] == ' ');
    std::size_t first = end;
    while (first > 0 && (is_digit(text[first - 1]) || text[first - 1] == '.')) --first;
    if (first == end || !begins_word(text, first) || !is_digit(text[first])) return;
    RecognisedItem item = last;
    item.reading->number = read_value(text, first).number;
    item.id = fmt::format("{:.10g} {}", *item.reading->number, item.unit);
    item.span = {first, end};
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(place), std::move(item));
    begin = first;
  }
}

std::size_t decimals_of(std::string_view number) {
  const std::size_t point = number.find('.');
  return point == number.npos ? 0 : number.size() - point - 1;
}

// "11.8, 12.1, 7.9 bar": numbers parted by commas share the unit of the last where all have as many
// decimals, or as many digits when there are none and three or more stand in the row.
void add_comma_listed(std::string_view text, std::size_t begin, const RecognisedItem& last,
                      std::vector<RecognisedItem>& items) {
  const std::size_t own_end = read_value(text, begin).end;
  const std::string_view own = text.substr(begin, own_end - begin);
  std::vector<RecognisedItem> listed;
  for (std::size_t at = begin; at > 2 && text.substr(at - 2, 2) == ", ";) {
    const std::size_t end = at - 2;
    std::size_t first = end;
    while (first > 0 && (is_digit(text[first - 1]) || text[first - 1] == '.')) --first;
    const std::string_view number = text.substr(first, end - first);
    if (number.empty() || !is_digit(number.front()) || !begins_word(text, first)) break;
    const bool same_digits = number.size() == own.size() && own.size() > 1;
    if (decimals_of(number) != decimals_of(own) || (decimals_of(own) == 0 && !same_digits)) break;
    RecognisedItem item = last;
    item.reading->number = read_value(text, first).number;
    item.id = fmt::format("{:.10g} {}", *item.reading->number, item.unit);
    item.span = {first, end};
    listed.insert(listed.begin(), std::move(item));
    at = first;
  }
  if (decimals_of(own) == 0 && listed.size() < 2) return;
  items.insert(items.end(), listed.begin(), listed.end());
}

// "OL", "O.L.", "o/l": nothing else is written so.
std::size_t end_of_open_circuit(std::string_view text, std::size_t begin) {
  for (const std::string_view spelling : {"o.l.", "o.l", "o/l", "ol"}) {
    const bool fits =
        stands_at(text, begin, spelling) && !is_word_char(byte_at(text, begin + spelling.size()));
    if (fits) return begin + spelling.size();
  }
  return 0;
}

}  // namespace

std::vector<RecognisedItem> read_readings(std::string_view text) {
  std::vector<RecognisedItem> items;
  for (std::size_t i = 0; i < text.size();) {
    if (!begins_word(text, i) || !is_word_char(text[i])) {
      ++i;
      continue;
    }
    if (is_digit(text[i])) {
      const Value value = read_value(text, i);
      if (auto item = reading_at(text, value)) {
        add_listed_before(text, value.begin, *item, items);
        add_comma_listed(text, value.begin, *item, items);
        items.push_back(std::move(*item));
      }
      i = value.end;
      continue;
    }
    // "one point four bar"
    if (const auto spelled = spelled_number_at(text, i)) {
      if (auto item = reading_at(text, {spelled->value, i, spelled->end})) {
        items.push_back(std::move(*item));
      }
      i = spelled->end;
      continue;
    }
    const std::size_t end = end_of_open_circuit(text, i);
    if (end > 0) {
      RecognisedItem item;
      item.kind = ItemKind::kReading;
      item.reading = Reading{std::nullopt, "OL"};
      item.id = "OL";
      item.span = {i, end};
      items.push_back(std::move(item));
    }
    i = std::max(end, i + 1);
  }
  return items;
}

std::optional<double> in_unit(double value, std::string_view from, std::string_view to) {
  if (from == to || (from == "deg" && to == "C")) return value;  // "18 degrees" at the vents
  const auto scale = [](std::string_view symbol) {
    return std::find_if(kScales.begin(), kScales.end(),
                        [&](const Scale& s) { return s.symbol == symbol; });
  };
  const auto a = scale(from), b = scale(to);
  if (a == kScales.end() || b == kScales.end() || a->base != b->base) return std::nullopt;
  return value * a->factor / b->factor;
}

}  // namespace shoplore
