// Intervals for a share known from few cases: "14 of 19, probably between 55 and 87 %".
//
// Two-sided, equal-tailed. Nothing seen (0 trials) gives [0, 1].
// Pure functions, any thread; they cannot fail.
// Requires everywhere: successes <= trials, 0 < confidence < 1.
#pragma once

#include <cstdint>

namespace shoplore {

// Closed; 0 <= low <= high <= 1.
struct Interval {
  double low = 0, high = 1;
  friend bool operator==(const Interval&, const Interval&) = default;
};

inline constexpr double kShownConfidence = 0.90;

// What is shown beside every share: quantiles of Beta(x + 1/2, n - x + 1/2), with low = 0 at
// x = 0 and high = 1 at x = n (Brown, Cai & DasGupta, Statistical Science 16, 2001, sec. 3.1.3).
[[nodiscard]] Interval jeffreys(std::uint64_t successes, std::uint64_t trials,
                                double confidence = kShownConfidence);

// Score interval without continuity correction (Wilson 1927; Newcombe 1998, method 3).
[[nodiscard]] Interval wilson(std::uint64_t successes, std::uint64_t trials, double confidence);

// Exact interval: never covers less often than promised, so it is wide (Clopper & Pearson 1934;
// Newcombe 1998, method 5).
[[nodiscard]] Interval clopper_pearson(std::uint64_t successes, std::uint64_t trials,
                                       double confidence);

// z that a standard normal variable stays within, on both sides, with this confidence: 1.96 at .95.
[[nodiscard]] double two_sided_z(double confidence);

// x with I_x(a, b) = p. Requires: 0 <= p <= 1, a > 0, b > 0.
[[nodiscard]] double beta_quantile(double p, double a, double b);

}  // namespace shoplore
