// What to watch out for, for people. Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/answer.hpp"

namespace shoplore {

// Of a whole answer as many are shown as one reads; `ask --watch-out` shows all.
inline constexpr std::size_t kWarningsInAnswer = 5;
// Refs of cases behind a warning; the JSON has more.
inline constexpr std::size_t kCasesShown = 3;

// The first `most` of the warnings with the cases behind them, and how many more there are.
// Lines without a heading; empty when there are none.
[[nodiscard]] std::string print_warnings(const std::vector<Warning>& warnings, std::size_t most,
                                         const Page& page);

// The section alone, or why there is nothing to watch out for, with the cautions and the note of
// every answer.
[[nodiscard]] std::string print_watch_out(const Answer& answer, const Page& page);

}  // namespace shoplore
