// What every estimate about lives shares: the observation, the estimate and the checks of both.
//
// A life is measured in one unit of the caller's choice (km, hours, days); every time, scale and
// estimate made from it is in that unit. "Failed" is the failure asked about: a part that was
// taken out for another reason, or is still fitted, was censored.
//
// Plain data and pure functions, any thread. Bad observations are a value: kInvalidInput, place
// "life 3" (counted from 1) or empty when it is about all of them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "indexer/result.hpp"
#include "query/intervals.hpp"

namespace shoplore {

// One part's life as far as it was seen.
struct Life {
  double exit = 0;      // when it failed, or was last seen whole
  bool failed = false;  // at `exit`; else still whole there (right-censored)
  // Late entry (left truncation): had it failed at or before this, we would never have known of
  // it. At risk after `entry`, up to and including `exit`. Empty: watched from new.
  std::optional<double> entry = {};
};

// A positive quantity and its interval.
struct Estimate {
  double value = 0;
  double low = 0, high = 0;  // closed
  friend bool operator==(const Estimate&, const Estimate&) = default;
};

// Of two estimates, or the information that inverts to it.
struct PairCovariance {
  double first = 0, second = 0, between = 0;
  friend bool operator==(const PairCovariance&, const PairCovariance&) = default;
};

// At least one life; every time finite and not negative; entry < exit.
[[nodiscard]] Result<void> check_lives(std::span<const Life> lives);

// Also what a life distribution of two parameters needs to have a best fit: exits above 0, two
// failures or more, and not all of them at the longest exit (all equal, above all: any shape that
// is still steeper would fit better).
[[nodiscard]] Result<void> check_lives_to_fit(std::span<const Life> lives);

[[nodiscard]] std::uint64_t count_failures(std::span<const Life> lives);

// z with P(Z <= z) = share. Requires: 0 < share < 1.
[[nodiscard]] double normal_quantile(double share);

// exp(log_value -+ z * log_error): normal on the log scale, so never below 0.
[[nodiscard]] Estimate estimate_on_log_scale(double log_value, double log_error, double confidence);

// The inverse of an observed information matrix. Empty when that is not positive definite: the
// likelihood is flat in some direction.
[[nodiscard]] std::optional<PairCovariance> inverted(const PairCovariance& information);

}  // namespace shoplore
