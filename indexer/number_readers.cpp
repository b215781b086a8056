// Small hand-written scanners: the patterns are short, and a note of any length costs linear time.
#include "indexer/number_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>

#include "indexer/fault_code.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_hex_digit(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}
bool is_word_char(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}
char at(std::string_view text, std::size_t i) {
  return i < text.size() ? text[i] : '\0';
}

std::size_t skip_spaces(std::string_view text, std::size_t i) {
  while (at(text, i) == ' ') ++i;
  return i;
}

int latest_model_year() {
  const std::chrono::year_month_day now{today().days};
  return static_cast<int>(now.year()) + 1;
}

// End of the code that begins here, failure type included; 0 when there is none.
std::size_t code_end(std::string_view text, std::size_t begin) {
  if (std::string_view("PCBUpcbu").find(text[begin]) == std::string_view::npos) return 0;
  std::size_t i = begin + 1;
  if (at(text, i) == ' ') ++i;
  if (at(text, i) < '0' || at(text, i) > '3') return 0;
  for (int k = 0; k < 4; ++k, ++i) {
    if (!is_hex_digit(at(text, i))) return 0;
  }
  const bool has_type = (at(text, i) == '-' || at(text, i) == ':') &&
                        is_hex_digit(at(text, i + 1)) && is_hex_digit(at(text, i + 2)) &&
                        !is_word_char(at(text, i + 3));
  if (has_type) return i + 3;
  return is_word_char(at(text, i)) ? 0 : i;
}

struct Number {
  double value = 0;
  std::size_t end = 0;  // after the digits, groups and k
  bool thousands = false;
};

// Digits with groups of three ("142,000", "142 000") or a k ("142k", "88.5k").
Number read_number(std::string_view text, std::size_t begin) {
  std::string digits;
  std::size_t i = begin;
  while (is_digit(at(text, i)) && digits.size() < 8) digits += text[i++];
  while (std::string_view(",. ").find(at(text, i)) != std::string_view::npos && i < text.size() &&
         is_digit(at(text, i + 1)) && is_digit(at(text, i + 2)) && is_digit(at(text, i + 3)) &&
         !is_digit(at(text, i + 4)) && digits.size() <= 4) {
    digits += text.substr(i + 1, 3);
    i += 4;
  }
  if (at(text, i) == '.' && is_digit(at(text, i + 1)) &&
      (at(text, i + 2) == 'k' || at(text, i + 2) == 'K')) {
    digits += text.substr(i, 2);
    i += 2;
  }
  Number number{std::stod(digits), i, false};
  const std::size_t k = skip_spaces(text, i);
  if ((at(text, k) == 'k' || at(text, k) == 'K') && !is_word_char(at(text, k + 1))) {
    number.value *= 1'000;
    number.thousands = true;
    number.end = k + 1;
  }
  return number;
}

struct Unit {
  std::optional<DistanceUnit> unit;
  std::size_t end = 0;
};

Unit read_unit(std::string_view text, std::size_t begin) {
  std::size_t i = skip_spaces(text, begin);
  const std::size_t word = i;
  while (is_word_char(at(text, i))) ++i;
  const std::string name = lower_case(text.substr(word, i - word));
  for (const char* km : {"km", "kms", "kilometres", "kilometers", "klicks"}) {
    if (name == km) return {DistanceUnit::kKilometres, i};
  }
  for (const char* mile : {"mi", "mile", "miles", "mls"}) {
    if (name == mile) return {DistanceUnit::kMiles, i};
  }
  return {};
}

bool begins_word(std::string_view text, std::size_t i) {
  return i == 0 || !is_word_char(text[i - 1]);
}

}  // namespace

std::vector<RecognisedItem> read_codes(std::string_view text) {
  std::vector<RecognisedItem> items;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t end = begins_word(text, i) ? code_end(text, i) : 0;
    const auto code = end > 0 ? parse_fault_code(text.substr(i, end - i)) : fail(Error{});
    if (!code) {
      ++i;
      continue;
    }
    RecognisedItem item;
    item.kind = ItemKind::kCode;
    item.id = code->text();
    item.span = {i, end};
    items.push_back(std::move(item));
    i = end;
  }
  return items;
}

std::vector<RecognisedItem> read_mileages(std::string_view text, DistanceUnit default_unit) {
  std::vector<RecognisedItem> items;
  for (std::size_t i = 0; i < text.size();) {
    if (!is_digit(text[i]) || !begins_word(text, i)) {
      ++i;
      continue;
    }
    const Number number = read_number(text, i);
    const Unit unit = read_unit(text, number.end);
    const bool is_mileage = unit.unit || (number.thousands && number.value >= 1'000);
    if (!is_mileage || number.value > 2'000'000) {
      i = number.end;
      continue;
    }
    const DistanceUnit taken = unit.unit.value_or(default_unit);
    RecognisedItem item;
    item.kind = ItemKind::kMileage;
    item.mileage_km = taken == DistanceUnit::kMiles ? kilometres_from_miles(number.value)
                                                    : Kilometres{std::llround(number.value)};
    item.id = std::to_string(item.mileage_km->value);
    item.span = {i, unit.unit ? unit.end : number.end};
    if (!unit.unit) {
      item.reading_chosen = fmt::format("'{}' taken as {}", text.substr(i, number.end - i),
                                        taken == DistanceUnit::kMiles ? "miles" : "kilometres");
    }
    i = item.span.end;
    items.push_back(std::move(item));
  }
  return items;
}

std::vector<RecognisedItem> read_model_years(std::string_view text) {
  std::vector<RecognisedItem> items;
  const int latest = latest_model_year();
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!is_digit(text[i]) || !begins_word(text, i)) continue;
    std::size_t end = i;
    while (is_digit(at(text, end))) ++end;
    if (is_word_char(at(text, end)) || end - i > 4) {
      i = end - 1;
      continue;
    }
    const int value = std::stoi(std::string(text.substr(i, end - i)));
    const bool is_short = end - i == 2 && i > 0 && text[i - 1] == '\'';
    const int year = is_short ? (value > latest % 100 ? 1900 : 2000) + value : value;
    const bool decimal =
        (i > 0 && (text[i - 1] == '.' || text[i - 1] == ',')) ||
        ((at(text, end) == '.' || at(text, end) == ',') && is_digit(at(text, end + 1)));
    if ((end - i == 4 || is_short) && year >= 1980 && year <= latest && !decimal) {
      RecognisedItem item;
      item.kind = ItemKind::kModelYear;
      item.id = std::to_string(year);
      item.span = {is_short ? i - 1 : i, end};
      if (is_short) item.reading_chosen = fmt::format("'{} taken as {}", text.substr(i, 2), year);
      items.push_back(std::move(item));
    }
    i = end - 1;
  }
  return items;
}

}  // namespace shoplore
