// Two nested searches. With y = ln t, m the mean and s the deviation, z = (y - m) / s:
//   a failure adds -ln s - y + ln f(z), a censored life ln Q(z); a late entry takes ln Q(z_entry).
// For a fixed s this is concave in m: the second derivative of ln Q is -hazard'(z) / s^2, and since
// the normal hazard is convex (Sampford, Ann. Math. Statist. 24, 1953) a later exit always
// outweighs its entry. So the best m is one root of the slope. Along those m the slope in ln s is
// the partial one; its falls through 0 are the maxima. Without late entries there is one (Burridge,
// J. R. Statist. Soc. B 43, 1981); with them there may be none or several, so a grid of ln s is
// walked and the highest is kept.
#include "query/lives/lognormal_fit.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>
#include <numbers>
#include <optional>
#include <vector>

#include "query/lives/normal_tail.hpp"
#include "query/lives/root_between.hpp"

namespace shoplore {
namespace {

// The grid of ln s, about that of the plain deviation of all ln exit.
constexpr double kDown = 10, kUp = 5, kStep = 0.5;

struct LogLife {
  double exit = 0;
  bool failed = false;
  std::optional<double> entry;  // empty as well for an entry at 0
};

struct Prepared {
  std::vector<LogLife> lives;
  double mean = 0, deviation = 0;  // of all ln exit, failed or not
};

Prepared prepare(std::span<const Life> lives) {
  Prepared prepared;
  const auto n = static_cast<double>(lives.size());
  for (const Life& life : lives) {
    LogLife log{std::log(life.exit), life.failed, {}};
    if (life.entry && *life.entry > 0) log.entry = std::log(*life.entry);
    prepared.lives.push_back(log);
    prepared.mean += log.exit / n;
  }
  double squares = 0;
  for (const LogLife& life : prepared.lives) squares += std::pow(life.exit - prepared.mean, 2);
  prepared.deviation = std::sqrt(squares / n);
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
  constexpr int kMostSteps = 60;
  for (int i = 0; i < kMostSteps && slope(low) <= 0; ++i, step *= 2) {
    high = low;
    low -= step;
  }
  for (int i = 0; i < kMostSteps && slope(high) > 0; ++i, step *= 2) {
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

// The highest of all maxima on the grid.
std::optional<Point> highest(const Prepared& prepared) {
  const double middle = std::log(prepared.deviation);
  std::optional<Point> best, before;
  for (double log_deviation = middle - kDown; log_deviation <= middle + kUp;
       log_deviation += kStep) {
    const auto here = best_point(prepared, log_deviation, before ? before->mean : prepared.mean);
    if (before && here && before->likelihood.by_log_deviation > 0 &&
        here->likelihood.by_log_deviation <= 0) {
      const auto found =
          maximum_between(prepared, log_deviation - kStep, log_deviation, before->mean);
      if (found && (!best || found->likelihood.value > best->likelihood.value)) best = found;
    }
    before = here;
  }
  return best;
}

auto no_best_spread() {
  return fail(ErrorCode::kInvalidInput, "", "no lognormal spread fits these lives best");
}

}  // namespace

Result<LognormalFit> fit_lognormal(std::span<const Life> lives) {
  if (const auto checked = check_lives_to_fit(lives); !checked) return fail(checked.error());
  const auto best = highest(prepare(lives));
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
