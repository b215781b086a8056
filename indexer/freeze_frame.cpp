#include "indexer/freeze_frame.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <string>

#include "indexer/text.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestName = 6;  // words

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_unit(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"rpm",   "/min", "1/min", "c",    "\u00b0c", "degc",  "f",   "\u00b0f", "%",
       "km",    "mi",   "miles", "km/h", "kph",     "mph",   "kpa", "bar",     "mbar",
       "hpa",   "psi",  "v",     "mv",   "a",       "ma",    "g/s", "kg/h",    "mg",
       "mg/st", "s",    "sec",   "min",  "h",       "hours", "ms",  "deg",     "\u00b0",
       "nm",    "l",    "hz",    "ohm",  "times"});
  return holds(words, word);
}

bool is_usual_name(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"rpm",      "speed",   "coolant",  "temp",     "temperature", "load",    "pressure",
       "map",      "maf",     "iat",      "ect",      "trim",        "stft",    "ltft",
       "throttle", "voltage", "distance", "odometer", "mileage",     "runtime", "lambda",
       "torque",   "pedal",   "egr",      "soot",     "ambient",     "baro",    "barometric",
       "advance",  "timing",  "time",     "boost",    "rail",        "air",     "vss"});
  return holds(words, word);
}

struct Number {
  double value = 0;
  std::size_t end = 0;
};

// "88", "-12.5", "12,5", "142,000" at the front of a field.
std::optional<Number> number_at(std::string_view field) {
  std::string digits;
  std::size_t i = 0;
  if (!field.empty() && (field[0] == '-' || field[0] == '+')) {
    if (field[0] == '-') digits += '-';
    ++i;
  }
  if (i >= field.size() || !is_digit(field[i])) return std::nullopt;
  for (; i < field.size() && digits.size() < 15; ++i) {
    const bool point =
        (field[i] == '.' || field[i] == ',') && i + 1 < field.size() && is_digit(field[i + 1]);
    if (!is_digit(field[i]) && !point) break;
    const bool groups = field[i] == ',' && i + 4 <= field.size() &&
                        std::all_of(field.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                                    field.begin() + static_cast<std::ptrdiff_t>(i) + 4, is_digit);
    if (is_digit(field[i])) digits += field[i];
    if (point && !groups) digits += '.';
  }
  Number number{0, i};
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), number.value);
  if (read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) return std::nullopt;
  return number;
}

std::vector<std::string_view> fields_of(std::string_view line) {
  constexpr std::string_view kGaps = " \t\r:=;|[]()";
  std::vector<std::string_view> fields;
  for (std::size_t i = line.find_first_not_of(kGaps); i < line.size();) {
    std::size_t end = std::min(line.find_first_of(kGaps, i), line.size());
    const std::size_t next = line.find_first_not_of(kGaps, end);
    while (end > i && line[end - 1] == ',') --end;
    if (end > i) fields.push_back(line.substr(i, end - i));
    i = next;
  }
  return fields;
}

// Whether the field is a word such as "coolant" or "since", not a number or a sign.
bool is_name(std::string_view field) {
  const char c = field.front();
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

std::vector<FreezeFrameValue> read_freeze_frame(std::string_view line) {
  std::vector<FreezeFrameValue> values;
  std::string name;
  std::size_t words = 0;
  bool usual = false;
  const std::vector<std::string_view> fields = fields_of(line);
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const auto number = number_at(fields[i]);
    if (!number) {
      if (!is_name(fields[i]) || ++words > kLongestName) return {};
      usual = usual || is_usual_name(lower_case(fields[i]));
      name += (name.empty() ? "" : " ") + std::string(fields[i]);
      continue;
    }
    if (name.empty()) return {};
    std::string unit(fields[i].substr(number->end));
    if (!unit.empty() && !is_unit(lower_case(unit))) return {};
    if (unit.empty() && i + 1 < fields.size() && is_unit(lower_case(fields[i + 1]))) {
      unit = fields[++i];
    }
    values.push_back({std::move(name), number->value, std::move(unit)});
    name.clear();
    words = 0;
  }
  return name.empty() && usual ? values : std::vector<FreezeFrameValue>{};
}

}  // namespace shoplore
