// Text for a terminal: how wide it is, where it breaks, how columns line up.
//
// Columns are those of a terminal, not bytes: UTF-8 is decoded, combining marks take none, wide
// East Asian characters two. Colour is an addition: the same words stand there without it.
// Requires everywhere: valid UTF-8 without control characters other than '\n'; a stray byte
// counts one column.
// Pure functions, any thread.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/quantities.hpp"

namespace shoplore {

inline constexpr std::size_t kMinWidth = 60, kDefaultWidth = 80, kMaxWidth = 120;

// Columns the text takes in one line. Escape sequences made by Ink take none.
[[nodiscard]] std::size_t display_width(std::string_view text);

// Words in lines of at most `width` columns; '\n' ends a line, runs of spaces become one. A word
// longer than a line is cut. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

// `text` wrapped with `first` before the first line and spaces of its width before the others,
// newline at the end of each; `width` includes the indent.
[[nodiscard]] std::string hang(std::string_view first, std::string_view text, std::size_t width);

// Filled with spaces to `width` columns, at the right or at the left; longer text stays whole.
[[nodiscard]] std::string pad_right(std::string text, std::size_t width);
[[nodiscard]] std::string pad_left(std::string text, std::size_t width);

struct TableRow {
  std::string text;                // wrapped under itself where it must
  std::vector<std::string> cells;  // right-aligned; as many in every row
};

// Rows with their cells in columns, two spaces apart, ending at `width`, newline at the end of
// each line. Where the cells leave too little room for the text they get a line of their own.
[[nodiscard]] std::string table(const std::vector<TableRow>& rows, std::size_t indent,
                                std::size_t width);

// "1 case", "2,400 cases".
[[nodiscard]] std::string counted(std::uint64_t count, std::string_view one, std::string_view many);

// "14 of 19".
[[nodiscard]] std::string of_text(std::uint64_t count, std::uint64_t out_of);

// "8 min", "2 h 10 min", to the nearest minute.
[[nodiscard]] std::string duration_text(double minutes);

enum class Colour { kOff, kOn };

// Width in columns, kMinWidth or more.
struct Page {
  std::size_t width = kDefaultWidth;
  Colour colour = Colour::kOff;
};

// ".81", "1.00", "<.01": a model's probability, told apart from counted percentages by its look.
[[nodiscard]] std::string probability_text(double probability);

// Puts emphasis on words, or leaves them alone when colour is off.
class Ink {
 public:
  explicit Ink(Colour colour) : colour_(colour) {}
  [[nodiscard]] bool on() const { return colour_ == Colour::kOn; }
  [[nodiscard]] std::string heading(std::string_view text) const { return wrapped("1", text); }
  [[nodiscard]] std::string bold(std::string_view text) const { return wrapped("1", text); }
  [[nodiscard]] std::string dim(std::string_view text) const { return wrapped("2", text); }
  [[nodiscard]] std::string warning(std::string_view text) const { return wrapped("33", text); }

 private:
  [[nodiscard]] std::string wrapped(std::string_view code, std::string_view text) const;
  Colour colour_;
};

}  // namespace shoplore
