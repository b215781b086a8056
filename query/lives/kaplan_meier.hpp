// What share of parts is still whole at an age, from lives of which some are not over yet: the
// product-limit curve (Kaplan & Meier, J. Amer. Statist. Assoc. 53, 1958), with late entry.
//
// Nothing is divided naively: a part still whole counts as at risk as long as it was seen, and no
// longer. A part last seen at the moment another fails is still at risk then; one first seen at
// that moment is not yet.
// It does not fit a distribution (weibull_fit, lognormal_fit) and says nothing beyond the longest
// life. With late entries it holds for parts that reached the first entry; where one or two are
// at risk early on it can fall to 0 and stay there: look at `at_risk` before showing it.
//
// Plain data and pure functions, any thread. Errors: check_lives (lives.hpp).
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "indexer/result.hpp"
#include "query/intervals.hpp"
#include "query/lives/lives.hpp"

namespace shoplore {

// How the interval at one age is made from S and its standard error e; all are cut to [0, 1].
enum class SurvivalBand {
  kLogLog,  // S^exp(-+z e / (S ln S)): stays inside (0, 1) by itself; best for few failures
  kLog,     // S exp(-+z e / S)
  kPlain,   // S -+ z e
};

struct SurvivalStep {
  double time = 0;  // an age at which at least one failed
  std::uint64_t at_risk = 0, failed = 0;
  double survival = 1;  // from this age until the next step
  // Greenwood (1926): e^2 = S^2 sum d / (n (n - d)). 0 where the curve has reached 0.
  double standard_error = 0;
};

// Right-continuous: 1 before the first step.
struct SurvivalCurve {
  std::vector<SurvivalStep> steps;  // by time, which rises
  double longest = 0;               // the longest life, failed or not
};

struct SurvivalAt {
  double survival = 1;
  double standard_error = 0;
  // Empty before the first failure and once the curve is at 0: there Greenwood's variance is 0 or
  // undefined, and an interval of no width would be a lie.
  std::optional<Interval> interval = {};
};

// The age by which a share has failed.
struct SurvivalQuantile {
  std::optional<double> time;       // empty: the curve never falls that far
  std::optional<double> low, high;  // empty: open on that side
};

[[nodiscard]] Result<SurvivalCurve> kaplan_meier(std::span<const Life> lives);

// Empty beyond the longest life, unless the curve has reached 0.
// Requires: time >= 0, 0 < confidence < 1.
[[nodiscard]] std::optional<SurvivalAt> survival_at(const SurvivalCurve& curve, double time,
                                                    SurvivalBand band = SurvivalBand::kLogLog,
                                                    double confidence = kShownConfidence);

// The smallest age with S <= 1 - share (equality within 1e-9, so that rounding in the product
// cannot skip a step). Its interval inverts the band: the smallest ages at which the band's lower
// and upper edge are <= 1 - share (Brookmeyer & Crowley, Biometrics 38, 1982). The median is
// share = 0.5. Requires: 0 < share < 1, 0 < confidence < 1.
[[nodiscard]] SurvivalQuantile survival_quantile(const SurvivalCurve& curve, double share,
                                                 SurvivalBand band = SurvivalBand::kLogLog,
                                                 double confidence = kShownConfidence);

// The mean life up to `horizon`: the area under the curve from 0, with its variance by Greenwood
// (Klein & Moeschberger, Survival Analysis, 2003, sec. 4.5).
struct RestrictedMean {
  double mean = 0, standard_error = 0;
};

// Requires: 0 < horizon <= curve.longest.
[[nodiscard]] RestrictedMean restricted_mean(const SurvivalCurve& curve, double horizon);

}  // namespace shoplore
