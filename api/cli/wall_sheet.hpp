// The strongest patterns of each engine family on paper: a page of HTML for the printer.
//
// Stands by itself: no script, no picture, nothing fetched; black on white, A4. What hangs on a
// wall is believed, so it holds only what is surest: causes whose p, adjusted by Holm over
// everything tested, is at most kMostChance, so that the chance of a single line being chance is at
// most that. At most kLinesAFamily lines a family, each of another cause, the strongest first; a
// family without any is left out. Pure function, any thread; errors: the book's and the counter's.
#pragma once

#include <string>

#include "query/patterns/pattern_book.hpp"

namespace shoplore {

inline constexpr std::size_t kLinesAFamily = 8;

struct WallSheet {
  std::string html;
  std::size_t families = 0, lines = 0;  // on it
};

// Of the families that the choice names or leaves open; a chosen cause holds too. `printed`: the
// day on it. Requires: the book is mined.
[[nodiscard]] Result<WallSheet> wall_sheet(const PatternBook& book, const PatternChoice& choice,
                                           const CaseCounter& counter, const Vocabulary& vocabulary,
                                           Date printed);

}  // namespace shoplore
