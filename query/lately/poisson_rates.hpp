// How often something happens, and whether more often than it did: rates of counted events.
//
// Events come singly and independently of each other (Poisson); exposure is what they were
// counted over, in any unit: months, cases, vehicle years. Two rates are compared exactly: given
// how many events there were in all, those of the first are binomial with the first's share of
// the exposure (Przyborowski & Wilenski, Biometrika 31, 1940; as in R's poisson.test).
// Two-sided p: the probability of every outcome no likelier than the one seen. The doubled
// one-sided p is larger and the mid-p smaller (about the level only on average); neither is used,
// so published figures of those kinds differ.
// It allows neither for events that cluster (one vehicle coming in three times) nor for exposure
// that is itself only estimated.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <cstdint>
#include <limits>

#include "query/intervals.hpp"

namespace shoplore {

struct CountedEvents {
  std::uint64_t events = 0;
  double exposure = 0;  // above 0
};

// Exact interval of the mean number of events when that many were seen (Garwood, Biometrika 28,
// 1936). Requires: 0 < confidence < 1.
[[nodiscard]] Interval poisson_mean_interval(std::uint64_t events, double confidence);

struct RateRatio {
  double ratio = 1;  // infinite when only the second saw none, 1 when neither saw any
  // Clopper & Pearson's interval of the binomial share, as a ratio.
  double low = 0, high = std::numeric_limits<double>::infinity();
  double p = 1;  // two-sided: of "both rates are the same"
};

// The first rate over the second. Requires: both exposures above 0, 0 < confidence < 1.
[[nodiscard]] RateRatio rate_ratio(const CountedEvents& first, const CountedEvents& second,
                                   double confidence);

// Probability of every outcome no likelier than `successes` of `trials`, each with that chance;
// outcomes as likely but for rounding (one part in ten million, as R) count.
// Requires: successes <= trials, 0 < chance < 1.
[[nodiscard]] double two_sided_binomial_p(std::uint64_t successes, std::uint64_t trials,
                                          double chance);

}  // namespace shoplore
