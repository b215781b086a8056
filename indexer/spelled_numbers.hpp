// Numbers that a note has in words: "ninety two thousand", "one point four", "twenty seventeen".
//
// A dictated note holds mileages, years and readings so. Does not know of units
// (number_readers.hpp, reading_reader.hpp) nor of "a" and "a couple", which count things.
// Pure functions, any thread. Places are bytes of the text.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace shoplore {

struct SpelledNumber {
  double value = 0;
  std::size_t end = 0;  // the byte after its last word
};

// The value of one word, "zero" to "ninety" in lower case; nothing of other words.
[[nodiscard]] std::optional<int> number_word(std::string_view word);

// The number whose words begin at this byte, the longest that can be read; below a million. Words
// are parted by single spaces or hyphens. Empty where no word of a number begins.
[[nodiscard]] std::optional<SpelledNumber> spelled_number_at(std::string_view text,
                                                             std::size_t begin);

// As years are said: "two thousand and seventeen", "twenty seventeen", "nineteen ninety eight",
// "twenty oh nine". Empty for other numbers, and for a bare "two thousand", which is rather a
// count.
[[nodiscard]] std::optional<SpelledNumber> spelled_year_at(std::string_view text,
                                                           std::size_t begin);

}  // namespace shoplore
