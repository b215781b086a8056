// A Weibull life fitted by maximum likelihood: S(t) = exp(-(t / scale)^shape), with lives not over
// yet (right-censored) and lives seen only from some age on (left-truncated).
//
// The shape tells whether a part wears out (above 1: its hazard rises with age) or fails mostly
// when new (below 1). All intervals are normal on the log scale, from the observed information
// (Meeker & Escobar, Statistical Methods for Reliability Data, 1998, sec. 8.4); with few failures
// `shape_by_likelihood` covers better. It does not judge whether a Weibull fits at all: see
// lognormal_fit and kaplan_meier.
//
// Plain data and pure functions, any thread. Times are in the unit of the lives. Errors:
// check_lives_to_fit (lives.hpp), and kInvalidInput when no shape within [kLeastShape,
// kGreatestShape] is best.
#pragma once

#include <cstdint>
#include <span>

#include "indexer/result.hpp"
#include "query/intervals.hpp"
#include "query/lives/lives.hpp"

namespace shoplore {

// Late entries can make ever smaller shapes fit better; nearly equal failures ever greater ones.
inline constexpr double kLeastShape = 1e-3, kGreatestShape = 1e6;

struct WeibullFit {
  double shape = 1;
  double scale = 0;           // in the unit of time; 63.2 % have failed by then
  double log_likelihood = 0;  // natural log, of densities per unit of time
  PairCovariance covariance;  // first: of ln scale; second: of ln shape
  std::uint64_t failures = 0, lives = 0;
};

[[nodiscard]] Result<WeibullFit> fit_weibull(std::span<const Life> lives);

[[nodiscard]] Estimate shape_of(const WeibullFit& fit, double confidence = kShownConfidence);
[[nodiscard]] Estimate scale_of(const WeibullFit& fit, double confidence = kShownConfidence);

// The age by which a share has failed: 0.1 is B10, 0.5 the median. Delta method on its logarithm.
// Requires: 0 < share < 1.
[[nodiscard]] Estimate failed_by(const WeibullFit& fit, double share,
                                 double confidence = kShownConfidence);

enum class HazardTrend {
  kRising,     // the whole interval of the shape is above 1
  kFalling,    // the whole interval is below 1
  kUndecided,  // the interval holds 1: chance failures cannot be told from either
};

[[nodiscard]] HazardTrend hazard_trend(const WeibullFit& fit, double confidence = kShownConfidence);

// The shapes whose profile log-likelihood is within half a chi-squared (1 degree of freedom)
// quantile of the best. An end outside [kLeastShape, kGreatestShape] is given as that limit.
// Requires: `fit` was fitted to these lives.
[[nodiscard]] Estimate shape_by_likelihood(std::span<const Life> lives, const WeibullFit& fit,
                                           double confidence = kShownConfidence);

// The best scale for a shape known from elsewhere; shape 1 is the exponential life, whose scale is
// the mean time between failures. One failure is enough. Errors: check_lives, no failure, or a
// failure at 0. Requires: shape within [kLeastShape, kGreatestShape].
struct WeibullOfShape {
  double scale = 0, log_likelihood = 0;
};
[[nodiscard]] Result<WeibullOfShape> fit_weibull_of_shape(std::span<const Life> lives,
                                                          double shape);

// Mean and standard deviation of the fitted life.
struct LifeMoments {
  double mean = 0, deviation = 0;
};
[[nodiscard]] LifeMoments moments_of(const WeibullFit& fit);

}  // namespace shoplore
