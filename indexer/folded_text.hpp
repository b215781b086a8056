// Text as identity matching sees it: one glyph a character, upper case, accents dropped, the many
// spaces and dashes of Unicode made one, so that "Jos\u00e9", "jose" and "JOSE" are the same word.
//
// Not for search, nor for anything shown: only to find and to compare identities.
// Pure functions, any thread. Malformed UTF-8 never fails: a stray byte is a glyph of its own.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shoplore {

struct Glyph {
  char32_t folded = 0;             // upper case; ' ' for any space, '-' for any dash
  bool capital = false;            // it was written as a capital (Latin letters to U+00DE)
  std::size_t begin = 0, end = 0;  // its bytes in the text, half-open
};

using FoldedText = std::vector<Glyph>;

// Invisible characters and combining accents have no glyph of their own.
[[nodiscard]] FoldedText fold(std::string_view text);

// Of folded characters.
[[nodiscard]] bool is_ascii_digit(char32_t folded);
[[nodiscard]] bool is_ascii_letter(char32_t folded);
[[nodiscard]] bool is_letter(char32_t folded);  // of any script
[[nodiscard]] bool is_word(char32_t folded);    // letter or digit

// Half-open range of glyphs.
struct GlyphRange {
  std::size_t first = 0, last = 0;
};

// A maximal run of letters and digits.
struct Run {
  GlyphRange at;
  std::string word;  // folded, as UTF-8
};

[[nodiscard]] std::vector<Run> runs_of(const FoldedText& text);

// The nearest run before run `index` whose word is none of `skipped`; empty when there is none,
// or when more than three characters lie between neighbours on the way.
[[nodiscard]] std::optional<std::size_t> run_before(const std::vector<Run>& runs, std::size_t index,
                                                    std::span<const std::string_view> skipped);

// The letters and digits of the folded text as UTF-8: "AB12 c\u00f6-e" becomes "AB12COE".
[[nodiscard]] std::string letters_and_digits(std::string_view text);

}  // namespace shoplore
