// Words are taken one by one as long as each can stand behind the one before: a digit after tens,
// anything below a hundred after "hundred" and "thousand".
#include "indexer/spelled_numbers.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "indexer/text.hpp"
#include "indexer/text_scan.hpp"

namespace shoplore {
namespace {

constexpr int kHundred = 100, kThousand = 1'000;

struct SpelledWord {
  std::string text;
  std::size_t end = 0;
};

SpelledWord word_at(std::string_view text, std::size_t begin) {
  std::size_t end = begin;
  while (is_word_char(byte_at(text, end))) ++end;
  return {lower_case(text.substr(begin, end - begin)), end};
}

SpelledWord next_word(std::string_view text, std::size_t end) {
  const char mark = byte_at(text, end);
  return mark == ' ' || mark == '-' ? word_at(text, end + 1) : SpelledWord{};
}

// What was read so far of a number's whole part.
struct Whole {
  int total = 0, group = 0;
  bool any = false;

  // Whether a word below a hundred may come next: "ninety [two]", "two hundred [ten]".
  bool takes(int value) const {
    if (!any || group % kHundred == 0) return value > 0 || !any;
    return value > 0 && value < 10 && group % kHundred >= 20 && group % 10 == 0;
  }
  bool takes_multiple(int multiple) const {
    return multiple == kHundred ? group > 0 && group < 10 : group > 0 && total == 0;
  }
  void multiply(int multiple) {
    if (multiple == kHundred) {
      group *= kHundred;
    } else {
      total = group * kThousand;
      group = 0;
    }
  }
};

int multiple_of(std::string_view word) {
  if (word == "hundred") return kHundred;
  return word == "thousand" ? kThousand : 0;
}

// "point four", "point one two": digits behind the whole part, or `end`.
SpelledNumber with_decimals(std::string_view text, double whole, std::size_t end) {
  SpelledNumber number{whole, end};
  SpelledWord word = next_word(text, end);
  if (word.text != "point") return number;
  double place = 0.1;
  for (word = next_word(text, word.end);; word = next_word(text, word.end)) {
    const auto digit = word.text == "oh" ? std::optional(0) : number_word(word.text);
    if (!digit || *digit > 9) return number;
    number = {number.value + *digit * place, word.end};
    place /= 10;
  }
}

}  // namespace

std::optional<int> number_word(std::string_view word) {
  constexpr auto words = std::to_array<std::pair<std::string_view, int>>(
      {{"zero", 0},     {"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},
       {"five", 5},     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},
       {"ten", 10},     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14},
       {"fifteen", 15}, {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19},
       {"twenty", 20},  {"thirty", 30},  {"forty", 40},     {"fourty", 40},   {"fifty", 50},
       {"sixty", 60},   {"seventy", 70}, {"eighty", 80},    {"ninety", 90}});
  const auto found = std::find_if(words.begin(), words.end(),
                                  [&](const auto& each) { return each.first == word; });
  return found == words.end() ? std::nullopt : std::optional(found->second);
}

std::optional<SpelledNumber> spelled_number_at(std::string_view text, std::size_t begin) {
  Whole whole;
  std::size_t end = begin;
  bool may_join = false;  // "two thousand [and] seventeen"
  SpelledWord word = word_at(text, begin);
  // "a hundred and ten"; "a" alone counts nothing here
  if (word.text == "a" && multiple_of(next_word(text, word.end).text) > 0) {
    whole.group = 1;
    word = next_word(text, word.end);
  }
  while (!word.text.empty()) {
    SpelledWord taken = word;
    if (may_join && word.text == "and") taken = next_word(text, word.end);
    const int multiple = multiple_of(taken.text);
    const auto value = number_word(taken.text);
    if (value && whole.takes(*value)) {
      whole.group += *value;
      whole.any = true;
    } else if (multiple > 0 && whole.takes_multiple(multiple)) {
      whole.multiply(multiple);
    } else {
      break;
    }
    may_join = multiple > 0;
    end = taken.end;
    word = next_word(text, end);
  }
  if (end == begin) return std::nullopt;
  return with_decimals(text, whole.total + whole.group, end);
}

std::optional<SpelledNumber> spelled_year_at(std::string_view text, std::size_t begin) {
  const SpelledWord first = word_at(text, begin);
  if (first.text == "twenty" || first.text == "nineteen") {
    const SpelledWord second = next_word(text, first.end);
    const int century = first.text == "twenty" ? 2'000 : 1'900;
    if (second.text == "oh") {
      const SpelledWord digit = next_word(text, second.end);
      const auto year = number_word(digit.text);
      if (!year || *year > 9) return std::nullopt;
      return SpelledNumber{static_cast<double>(century + *year), digit.end};
    }
    if (second.text.empty()) return std::nullopt;
    const auto rest = spelled_number_at(text, first.end + 1);
    if (!rest || rest->value < 10 || rest->value > 99) return std::nullopt;
    return SpelledNumber{century + rest->value, rest->end};
  }
  const auto number = spelled_number_at(text, begin);
  return number && number->value > 2'000 && number->value < 2'100 ? number : std::nullopt;
}

}  // namespace shoplore
