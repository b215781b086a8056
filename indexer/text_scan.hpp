// Looking along the bytes of a note, one at a time: characters, and the words beside a place.
//
// For the readers that work on bytes (numbers, readings, codes); readers that work on words use
// note_page.hpp. Positions are byte offsets; past the end is allowed and reads as nothing.
// Pure functions, any thread, linear in what they pass.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace shoplore {

[[nodiscard]] constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
[[nodiscard]] constexpr bool is_hex_digit(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}
// Letters, digits and every byte beyond ASCII.
[[nodiscard]] constexpr bool is_word_char(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}

// The byte at i; '\0' past the end.
[[nodiscard]] constexpr char byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? text[i] : '\0';
}

// Whether no word goes on from before i.
[[nodiscard]] constexpr bool begins_word(std::string_view text, std::size_t i) {
  return i == 0 || !is_word_char(text[i - 1]);
}

// The first place from i on that is no space; no-break spaces, which keyboards put between a
// number and its unit, are spaces too.
[[nodiscard]] std::size_t skip_spaces(std::string_view text, std::size_t i);

// The word that begins at i or after spaces, lower case; empty when something else does.
[[nodiscard]] std::string word_after(std::string_view text, std::size_t i);

// The word that ends at `end`, or before spaces and one of : = there; as written.
[[nodiscard]] std::string_view word_before(std::string_view text, std::size_t end);

}  // namespace shoplore
