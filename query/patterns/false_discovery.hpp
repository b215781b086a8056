// Many tests at once: what is left of a small p when thousands of things were tried.
//
// Both take the p-values worth looking at and the number of tests made in all; those not listed
// count as p = 1. Results in the order of the p-values, at most 1, never smaller for a larger p.
// Pure functions, any thread; they cannot fail. Requires: 0 <= p <= 1, tested >= p.size().
#pragma once

#include <cstdint>
#include <vector>

namespace shoplore {

// q: take all with q <= .05 and about one in twenty of them is chance, on average at most
// (Benjamini & Hochberg, J R Statist Soc B 57, 1995; holds for tests that depend positively on each
// other: Benjamini & Yekutieli, Ann Statist 29, 2001).
[[nodiscard]] std::vector<double> benjamini_hochberg(const std::vector<double>& p,
                                                     std::uint64_t tested);

// Adjusted p: take all with <= .05 and the probability that even one of them is chance is at most
// .05, however the tests depend (Holm, Scand J Statist 6, 1979).
[[nodiscard]] std::vector<double> holm(const std::vector<double>& p, std::uint64_t tested);

}  // namespace shoplore
