#include "indexer/folded_text.hpp"

#include <algorithm>

namespace shoplore {
namespace {

struct Decoded {
  char32_t point = 0;
  std::size_t size = 1;
};

// A malformed sequence gives its first byte as U+FFFD.
Decoded decode(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1};
  const std::size_t size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || text.size() < size) return {0xFFFD, 1};
  char32_t point = first & (0xFFU >> (size + 1));
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return {0xFFFD, 1};
    point = (point << 6) | (byte(i) & 0x3FU);
  }
  return {point, size};
}

void encode(char32_t point, std::string& out) {
  const auto put = [&](char32_t byte) { out += static_cast<char>(byte); };
  if (point < 0x80) return put(point);
  if (point < 0x800) {
    put(0xC0 | (point >> 6));
  } else {
    if (point < 0x10000) {
      put(0xE0 | (point >> 12));
    } else {
      put(0xF0 | (point >> 18));
      put(0x80 | ((point >> 12) & 0x3F));
    }
    put(0x80 | ((point >> 6) & 0x3F));
  }
  put(0x80 | (point & 0x3F));
}

bool in(char32_t point, char32_t first, char32_t last) {
  return point >= first && point <= last;
}

// Base letters of U+00C0 to U+017F; ' ' where there is none (the signs for times and divided by).
constexpr std::string_view kBaseLetters =
    "AAAAAAACEEEEIIIIDNOOOOO OUUUUYTS"   // U+00C0
    "AAAAAAACEEEEIIIIDNOOOOO OUUUUYTY"   // U+00E0
    "AAAAAACCCCCCCCDDDDEEEEEEEEEEGGGG"   // U+0100
    "GGGGHHHHIIIIIIIIIIIIJJKKKLLLLLLL"   // U+0120
    "LLLNNNNNNNNNOOOOOOOORRRRRRSSSSSS"   // U+0140
    "SSTTTTTTUUUUUUUUUUUUWWYYYZZZZZZS";  // U+0160
static_assert(kBaseLetters.size() == 0x180 - 0xC0);

bool is_invisible(char32_t point) {
  return point == 0xAD || in(point, 0x200B, 0x200F) || in(point, 0x2060, 0x2064) ||
         point == 0xFEFF || in(point, 0x0300, 0x036F);
}

char32_t folded(char32_t point) {
  if (in(point, 'a', 'z')) return point - 'a' + 'A';
  if (point < 0x80) return in(point, '\t', '\r') ? U' ' : point;
  if (point == 0xA0 || in(point, 0x2000, 0x200A) || point == 0x202F || point == 0x3000) return U' ';
  if (in(point, 0x2010, 0x2015) || point == 0x2212) return U'-';
  if (in(point, 0xFF01, 0xFF5E)) return folded(point - 0xFF01 + '!');  // full-width forms
  if (in(point, 0xC0, 0x17F)) {
    return static_cast<char32_t>(kBaseLetters[static_cast<std::size_t>(point - 0xC0)]);
  }
  if (point == 0x3C2) return 0x3A3;                   // final sigma
  if (in(point, 0x3B1, 0x3C9)) return point - 0x20;   // Greek
  if (in(point, 0x430, 0x44F)) return point - 0x20;   // Cyrillic
  if (in(point, 0x450, 0x45F)) return point - 0x50;   // Cyrillic, further letters
  if (in(point, 0x1E00, 0x1EFF)) return point & ~1U;  // Latin pairs: capital, then small
  return point;
}

}  // namespace

FoldedText fold(std::string_view text) {
  FoldedText glyphs;
  glyphs.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = decode(text.substr(at));
    if (!is_invisible(next.point)) {
      const bool capital = in(next.point, 'A', 'Z') || in(next.point, 0xC0, 0xDE);
      glyphs.push_back({folded(next.point), capital, at, at + next.size});
    } else if (!glyphs.empty()) {
      glyphs.back().end = at + next.size;  // goes with the character it follows
    }
    at += next.size;
  }
  return glyphs;
}

bool is_ascii_digit(char32_t folded) {
  return in(folded, '0', '9');
}

bool is_ascii_letter(char32_t folded) {
  return in(folded, 'A', 'Z');
}

bool is_letter(char32_t folded) {
  if (folded < 0x80) return is_ascii_letter(folded);
  const bool sign = in(folded, 0x80, 0xBF) || in(folded, 0x2000, 0x2BFF) ||
                    in(folded, 0x3000, 0x303F) || in(folded, 0xE000, 0xF8FF) || folded == 0xFFFD ||
                    folded >= 0x1F000;
  return !sign;
}

bool is_word(char32_t folded) {
  return is_ascii_digit(folded) || is_letter(folded);
}

std::vector<Run> runs_of(const FoldedText& text) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!is_word(text[i].folded)) continue;
    if (runs.empty() || runs.back().at.last != i) runs.push_back({{i, i}, ""});
    runs.back().at.last = i + 1;
    encode(text[i].folded, runs.back().word);
  }
  return runs;
}

std::optional<std::size_t> run_before(const std::vector<Run>& runs, std::size_t index,
                                      std::span<const std::string_view> skipped) {
  while (index > 0) {
    const Run& before = runs[index - 1];
    if (runs[index].at.first - before.at.last > 3) return std::nullopt;
    --index;
    if (std::find(skipped.begin(), skipped.end(), before.word) == skipped.end()) return index;
  }
  return std::nullopt;
}

std::string letters_and_digits(std::string_view text) {
  std::string plain;
  for (const Glyph& glyph : fold(text)) {
    if (is_word(glyph.folded)) encode(glyph.folded, plain);
  }
  return plain;
}

}  // namespace shoplore
