// Two nested searches. With y = ln t, m the mean and s the deviation, z = (y - m) / s:
//   a failure adds -ln s - y + ln f(z), a censored life ln Q(z); a late entry takes ln Q(z_entry).
// For a fixed s this is concave in m: the second derivative of ln Q is -hazard'(z) / s^2, and since
// the normal hazard is convex (Sampford, Ann. Math. Statist. 24, 1953) a later exit always
// outweighs its entry. So the best m is one root of the slope. Along those m the slope in ln s is
// the partial one; where it falls through 0 is the maximum, walked to on a grid of ln s. Without
// late entries there is exactly one (Burridge, J. R. Statist. Soc. B 43, 1981). With them there may
// be none. That there could be several is not ruled out by a proof, but a search of the whole grid
// through 87,000 small random samples met no second one.
#include "query/lives/lognormal_fit.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <vector>

#include "query/lives/normal_tail.hpp"
#include "query/lives/root_between.hpp"

namespace shoplore {
namespace {

// The grid of ln s, about the logarithm of the span. Without late entries s is at least about
// span / sqrt(2 n), since the life that makes the span must be likely too.
constexpr double kDown = 7, kUp = 5, kStep = 0.5;
constexpr int kMostDoublings = 60;

struct LogLife {
  double exit = 0;
  bool failed = false;
  std::optional<double> entry;  // empty as well for an entry at 0
};

struct Prepared {
  std::vector<LogLife> lives;
  double mean = 0;  // of all ln exit, failed or not
  double span = 0;  // from the first failure to the longest life, in ln t; above 0 once checked
};

Prepared prepare(std::span<const Life> lives) {
  Prepared prepared;
  double longest = 0, first = std::numeric_limits<double>::infinity();
  for (const Life& life : lives) {
    LogLife log{std::log(life.exit), life.failed, {}};
    if (life.entry && *life.entry > 0) log.entry = std::log(*life.entry);
    prepared.mean += log.exit / static_cast<double>(lives.size());
    longest = std::max(longest, life.exit);
    if (life.failed) first = std::min(first, life.exit);
    prepared.lives.push_back(log);
  }
  prepared.span = std::log(longest / first);
  return prepared;
}

// The log-likelihood and its derivatives in (mean, ln deviation).
struct Likelihood {
  double value = 0, by_mean = 0, by_log_deviation = 0;
  PairCovariance information;  // minus the second derivatives
};

Likelihood likelihood_at(const Prepared& prepared, double mean, double deviation) {
  Likelihood sum;
  // A term g((y - m) / s), by its value, slope and curvature in z.
  const auto add = [&](double sign, double z, double value, double slope, double curvature) {
    sum.value += sign * value;
    sum.by_mean -= sign * slope / deviation;
    sum.by_log_deviation -= sign * z * slope;
    sum.information.first -= sign * curvature / (deviation * deviation);
    sum.information.between -= sign * (curvature * z + slope) / deviation;
    sum.information.second -= sign * z * (curvature * z + slope);
  };
  const auto add_tail = [&](double sign, double z) {
    const NormalTail tail = normal_tail(z);
    add(sign, z, tail.log_share, -tail.hazard, -tail.hazard_slope);
  };
  const double log_deviation = std::log(deviation);
  const double log_root_two_pi = std::log(2 * std::numbers::pi) / 2;
  for (const LogLife& life : prepared.lives) {
    const double z = (life.exit - mean) / deviation;
    if (life.failed) {
      add(1, z, -z * z / 2 - log_root_two_pi - log_deviation - life.exit, -z, -1);
      sum.by_log_deviation -= 1;
    } else {
      add_tail(1, z);
    }
    if (life.entry) add_tail(-1, (*life.entry - mean) / deviation);
  }
  return sum;
}

// The best mean for a deviation, looked for outwards from `from`: the slope falls through 0. It is
// positive far below every life and negative far above.
std::optional<double> best_mean(const Prepared& prepared, double deviation, double from) {
  const auto slope = [&](double m) { return likelihood_at(prepared, m, deviation).by_mean; };
  double low = from, high = from, step = deviation;
  for (int i = 0; i < kMostDoublings && slope(low) <= 0; ++i, step *= 2) {
    high = low;
    low -= step;
  }
  for (int i = 0; i < kMostDoublings && slope(high) > 0; ++i, step *= 2) {
    low = high;
    high += step;
  }
  if (!(slope(low) > 0) || !(slope(high) <= 0)) return std::nullopt;
  return root_between(slope, low, high);
}

struct Point {
  double mean = 0, deviation = 0;
  Likelihood likelihood;
};

std::optional<Point> best_point(const Prepared& prepared, double log_deviation, double from) {
  const double deviation = std::exp(log_deviation);
  const auto mean = best_mean(prepared, deviation, from);
  if (!mean) return std::nullopt;
  return Point{*mean, deviation, likelihood_at(prepared, *mean, deviation)};
}

// The maximum between two values of ln s between which the slope falls through 0.
std::optional<Point> maximum_between(const Prepared& prepared, double low, double high,
                                     double from) {
  const auto slope = [&](double log_deviation) {
    const auto point = best_point(prepared, log_deviation, from);
    return point ? point->likelihood.by_log_deviation : 0;
  };
  return best_point(prepared, root_between(slope, low, high), from);
}

// Walks the grid from its middle the way the likelihood rises, to where it falls again.
std::optional<Point> maximum_of(const Prepared& prepared) {
  double log_deviation = std::log(prepared.span);
  auto here = best_point(prepared, log_deviation, prepared.mean);
  if (!here) return std::nullopt;
  const bool up = here->likelihood.by_log_deviation > 0;
  const double step = up ? kStep : -kStep;
  for (double walked = 0; walked <= (up ? kUp : kDown); walked += kStep) {
    const auto next = best_point(prepared, log_deviation + step, here->mean);
    if (!next) return std::nullopt;
    if ((next->likelihood.by_log_deviation > 0) != up) {
      return maximum_between(prepared, std::min(log_deviation, log_deviation + step),
                             std::max(log_deviation, log_deviation + step), here->mean);
    }
    log_deviation += step;
    here = next;
  }
  return std::nullopt;
}

auto no_best_spread() {
  return fail(ErrorCode::kInvalidInput, "", "no lognormal spread fits these lives best");
}

}  // namespace

Result<LognormalFit> fit_lognormal(std::span<const Life> lives) {
  if (const auto checked = check_lives_to_fit(lives); !checked) return fail(checked.error());
  const auto best = maximum_of(prepare(lives));
  if (!best) return no_best_spread();
  const auto covariance = inverted(best->likelihood.information);
  if (!covariance) return no_best_spread();
  return LognormalFit{best->mean,  best->deviation,       best->likelihood.value,
                      *covariance, count_failures(lives), lives.size()};
}

Estimate median_of(const LognormalFit& fit, double confidence) {
  return estimate_on_log_scale(fit.log_mean, std::sqrt(fit.covariance.first), confidence);
}

Estimate log_deviation_of(const LognormalFit& fit, double confidence) {
  return estimate_on_log_scale(std::log(fit.log_deviation), std::sqrt(fit.covariance.second),
                               confidence);
}

Estimate failed_by(const LognormalFit& fit, double share, double confidence) {
  assert(share > 0 && share < 1);
  // ln t = m + s z, whose slope in ln s is s z.
  const double w = fit.log_deviation * normal_quantile(share);
  const PairCovariance& of = fit.covariance;
  const double variance = of.first + 2 * w * of.between + w * w * of.second;
  return estimate_on_log_scale(fit.log_mean + w, std::sqrt(variance), confidence);
}

FormComparison compare_forms(const WeibullFit& weibull, const LognormalFit& lognormal) {
  const double lead = lognormal.log_likelihood - weibull.log_likelihood;
  return {lead > 0 ? LifeForm::kLognormal : LifeForm::kWeibull, std::abs(lead)};
}

}  // namespace shoplore
