// A lognormal life fitted by maximum likelihood: ln T is normal with mean `log_mean` and standard
// deviation `log_deviation`; right-censored and left-truncated lives as for the Weibull.
//
// Its hazard rises and then falls, whatever the fit. Intervals are normal, on the log scale where
// the quantity is positive, from the observed information (Meeker & Escobar, 1998, sec. 8.4).
//
// Plain data and pure functions, any thread. Times are in the unit of the lives. Errors:
// check_lives_to_fit (lives.hpp), and kInvalidInput when no spread is best: with late entries the
// likelihood may grow for ever as the spread does.
#pragma once

#include <cstdint>
#include <span>

#include "indexer/result.hpp"
#include "query/intervals.hpp"
#include "query/lives/lives.hpp"
#include "query/lives/weibull_fit.hpp"

namespace shoplore {

struct LognormalFit {
  double log_mean = 0;        // of ln t; exp of it is the median life
  double log_deviation = 1;   // of ln t
  double log_likelihood = 0;  // natural log, of densities per unit of time
  PairCovariance covariance;  // first: of log_mean; second: of ln log_deviation
  std::uint64_t failures = 0, lives = 0;
};

[[nodiscard]] Result<LognormalFit> fit_lognormal(std::span<const Life> lives);

// exp(log_mean): the age by which half have failed.
[[nodiscard]] Estimate median_of(const LognormalFit& fit, double confidence = kShownConfidence);
[[nodiscard]] Estimate log_deviation_of(const LognormalFit& fit,
                                        double confidence = kShownConfidence);

// The age by which a share has failed: 0.1 is B10. Requires: 0 < share < 1.
[[nodiscard]] Estimate failed_by(const LognormalFit& fit, double share,
                                 double confidence = kShownConfidence);

enum class LifeForm { kWeibull, kLognormal };

// Both have two parameters, so the greater log-likelihood is also the smaller AIC and BIC.
struct FormComparison {
  LifeForm better = LifeForm::kWeibull;  // of equals, the Weibull
  double lead = 0;  // in log-likelihood; below about 2 the data hardly tell them apart
};

// Requires: both were fitted to the same lives.
[[nodiscard]] FormComparison compare_forms(const WeibullFit& weibull,
                                           const LognormalFit& lognormal);

}  // namespace shoplore
