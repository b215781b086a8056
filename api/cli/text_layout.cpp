#include "api/cli/text_layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace shoplore {

namespace {

struct Range {
  char32_t first, last;
};

// The blocks met in trade notes and names; not the whole of Unicode's tables.
constexpr std::array kNoWidth = {Range{0x300, 0x36f}, Range{0x200b, 0x200f}, Range{0xfe00, 0xfe0f},
                                 Range{0x20d0, 0x20ff}};
constexpr std::array kWide = {
    Range{0x1100, 0x115f}, Range{0x2e80, 0xa4cf},   Range{0xac00, 0xd7a3},
    Range{0xf900, 0xfaff}, Range{0xfe30, 0xfe6f},   Range{0xff00, 0xff60},
    Range{0xffe0, 0xffe6}, Range{0x1f300, 0x1faff}, Range{0x20000, 0x3fffd}};

template <std::size_t N>
bool in(char32_t c, const std::array<Range, N>& ranges) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [c](const Range& r) { return r.first <= c && c <= r.last; });
}

// Bytes of the character that starts here; 1 for a stray byte.
std::size_t character_bytes(std::string_view text, std::size_t at) {
  const auto lead = static_cast<unsigned char>(text[at]);
  std::size_t bytes = 1;
  if (lead >= 0xf0)
    bytes = 4;
  else if (lead >= 0xe0)
    bytes = 3;
  else if (lead >= 0xc0)
    bytes = 2;
  return std::min(bytes, text.size() - at);
}

std::size_t character_width(std::string_view character) {
  if (character.size() == 1) return 1;
  constexpr std::array<unsigned, 5> kLeadBits = {0, 0x7f, 0x1f, 0x0f, 0x07};
  char32_t point = static_cast<unsigned char>(character[0]) & kLeadBits[character.size()];
  for (const char c : character.substr(1)) {
    point = (point << 6) | (static_cast<unsigned char>(c) & 0x3fU);
  }
  if (in(point, kNoWidth)) return 0;
  return in(point, kWide) ? 2 : 1;
}

// Past an escape sequence of Ink ("\x1b[" digits "m") that starts here; `at` if none does.
std::size_t after_escape(std::string_view text, std::size_t at) {
  if (text.substr(at, 2) != "\x1b[") return at;
  const auto end = text.find('m', at);
  return end == std::string_view::npos ? at : end + 1;
}

// The longest piece of a word that fits the width; at least one character.
std::string_view fitting_piece(std::string_view word, std::size_t width) {
  std::size_t at = 0;
  std::size_t used = 0;
  while (at < word.size()) {
    if (const auto past = after_escape(word, at); past != at) {
      at = past;
      continue;
    }
    const auto bytes = character_bytes(word, at);
    used += character_width(word.substr(at, bytes));
    if (used > width && at > 0) break;
    at += bytes;
  }
  return word.substr(0, at);
}

void add_word(std::vector<std::string>& lines, std::string_view word, std::size_t width) {
  const std::size_t there = display_width(lines.back());
  const std::size_t space = there == 0 ? 0 : 1;
  if (there + space + display_width(word) <= width) {
    lines.back() += std::string(space, ' ') + std::string(word);
    return;
  }
  if (there > 0) lines.emplace_back();
  while (display_width(word) > width) {
    const auto piece = fitting_piece(word, width);
    lines.back() = piece;
    word.remove_prefix(piece.size());
    lines.emplace_back();
  }
  lines.back() = word;
}

}  // namespace

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (const auto past = after_escape(text, at); past != at) {
      at = past;
      continue;
    }
    const auto bytes = character_bytes(text, at);
    width += character_width(text.substr(at, bytes));
    at += bytes;
  }
  return width;
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  width = std::max<std::size_t>(width, 1);
  std::vector<std::string> lines(1);
  std::size_t at = 0;
  while (at < text.size()) {
    if (text[at] == '\n') {
      lines.emplace_back();
      ++at;
    } else if (text[at] == ' ' || text[at] == '\t' || text[at] == '\r') {
      ++at;
    } else {
      const auto end = std::min(text.find_first_of(" \t\r\n", at), text.size());
      add_word(lines, text.substr(at, end - at), width);
      at = end;
    }
  }
  return lines;
}

std::string hang(std::string_view first, std::string_view text, std::size_t width) {
  const std::size_t indent = display_width(first);
  const std::size_t room = width > indent + 10 ? width - indent : 10;
  std::string out;
  std::string before(first);
  for (const std::string& line : wrap(text, room)) {
    std::string whole = before + line;
    while (!whole.empty() && whole.back() == ' ') whole.pop_back();
    out += whole + "\n";
    before = std::string(indent, ' ');
  }
  return out;
}

std::string pad_right(std::string text, std::size_t width) {
  const std::size_t there = display_width(text);
  if (there < width) text.append(width - there, ' ');
  return text;
}

std::string pad_left(std::string text, std::size_t width) {
  const std::size_t there = display_width(text);
  return there < width ? std::string(width - there, ' ') + text : text;
}

std::string table(const std::vector<TableRow>& rows, std::size_t indent, std::size_t width) {
  std::vector<std::size_t> columns;
  for (const TableRow& row : rows) {
    columns.resize(std::max(columns.size(), row.cells.size()));
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      columns[i] = std::max(columns[i], display_width(row.cells[i]));
    }
  }
  std::size_t taken = indent;
  for (const std::size_t column : columns) taken += 2 + column;
  constexpr std::size_t kLeastText = 14;
  const bool own_line = taken + kLeastText > width;
  const std::size_t room = own_line ? width - indent : width - taken;
  std::string out;
  for (const TableRow& row : rows) {
    std::string cells;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      cells += "  " + pad_left(row.cells[i], columns[i]);
    }
    cells.resize(cells.find_last_not_of(' ') + 1);
    const auto lines = wrap(row.text, room);
    const std::string margin(indent, ' ');
    if (own_line) {
      for (const std::string& line : lines) out += margin + line + "\n";
      out += pad_left(cells.substr(std::min<std::size_t>(cells.size(), 2)), width) + "\n";
      continue;
    }
    out += margin + pad_right(lines[0], room) + cells + "\n";
    for (std::size_t i = 1; i < lines.size(); ++i) out += margin + lines[i] + "\n";
  }
  return out;
}

std::string counted(std::uint64_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", thousands(static_cast<std::int64_t>(count)), count == 1 ? one : many);
}

std::string of_text(std::uint64_t count, std::uint64_t out_of) {
  return fmt::format("{} of {}", thousands(static_cast<std::int64_t>(count)),
                     thousands(static_cast<std::int64_t>(out_of)));
}

std::string duration_text(double minutes) {
  constexpr int kMinutesAnHour = 60;
  const auto whole = static_cast<int>(std::lround(minutes));
  const int hours = whole / kMinutesAnHour, rest = whole % kMinutesAnHour;
  if (hours == 0) return fmt::format("{} min", rest);
  return rest == 0 ? fmt::format("{} h", hours) : fmt::format("{} h {} min", hours, rest);
}

std::string Ink::wrapped(std::string_view code, std::string_view text) const {
  if (!on() || text.empty()) return std::string(text);
  return fmt::format("\x1b[{}m{}\x1b[0m", code, text);
}

std::string probability_text(double probability) {
  if (probability < 0.005) return "<.01";  // never impossible
  const std::string text = fmt::format("{:.2f}", probability);
  return text.front() == '0' ? text.substr(1) : text;
}

}  // namespace shoplore
