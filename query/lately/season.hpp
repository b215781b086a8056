// The yearly course of a failure: how much likelier a case is that failure in each month of the
// year. A failure that comes every winter is no news in December.
//
// Counts of a failure among all counted cases, month by month, are fitted by a Poisson regression
// with one wave a year, ln(share) = a + b cos(2 pi m / 12) + c sin(2 pi m / 12), by Newton's method
// (McCullagh & Nelder, Generalized Linear Models, 1989, ch. 6). b and c are held towards 0 like
// normal values with a standard deviation of 1, so that a failure seen twice, both in January,
// does not become one of January alone. A wave is believed only if it fits clearly better than
// none: twice the gain of log-likelihood above 6 (chi-squared, 2 degrees, p = .05).
// One wave cannot follow two peaks a year or a season of a single month.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <span>

namespace shoplore {

// Weights by month, January first; their mean is 1. All 1: no season.
using SeasonWeights = std::array<double, 12>;
inline constexpr SeasonWeights kNoSeason{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};

// Fewer months than this cannot tell a season from a bad winter.
inline constexpr std::size_t kFewestMonthsForSeason = 24;

// Of a failure's counts among `cases`, month by month from `first`; kNoSeason when there are too
// few months or no wave to believe in. Requires: as many counts as cases.
[[nodiscard]] SeasonWeights season_of(std::span<const std::uint32_t> counts,
                                      std::span<const std::uint32_t> cases,
                                      std::chrono::year_month first);

// Number of the month, 0 January to 11 December.
[[nodiscard]] std::size_t month_of_year(std::chrono::year_month month);

}  // namespace shoplore
