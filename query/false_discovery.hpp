// Many tests at once: how many of those that stand out would be wrong to believe.
//
// Each p value becomes the smallest share of wrong ones (false discovery rate) at which its test
// still stands out: show what has q <= .05 and on average at most one in twenty shown is wrong
// (Benjamini & Hochberg, J. R. Statist. Soc. B 57, 1995, sec. 3; as adjusted values, Yekutieli &
// Benjamini 1999). Holds for tests that are independent or rise together (Benjamini & Yekutieli,
// Ann. Statist. 29, 2001). Whoever calls decides what was tested: everything looked at, not only
// what was worth showing.
// Pure function, any thread; it cannot fail.
#pragma once

#include <span>
#include <vector>

namespace shoplore {

// What is shown as standing out has at most this.
inline constexpr double kShownFalseDiscovery = 0.05;

// q of each p, in the same order; never below its p, at most 1. Requires: 0 <= p <= 1.
[[nodiscard]] std::vector<double> false_discovery_rates(std::span<const double> p_values);

// Of tests on counts, those that could stand out at that level, told by the smallest p each could
// have given its totals: a test that never could is no look at the data and costs the others
// nothing (Tarone, Biometrics 46, 1990; with false discovery rates, Gilbert, Appl. Statist. 54,
// 2005). The level any of them must reach is `level` over the number of those kept.
[[nodiscard]] std::vector<bool> tests_that_could_stand_out(std::span<const double> smallest_p,
                                                           double level);

}  // namespace shoplore
