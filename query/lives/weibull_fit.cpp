// One equation in the shape, solved by bracketing.
//
// With N(s) parts at risk at age s the log-likelihood of shape b and scale h is
//   d ln b - d b ln h + (b - 1) sum_failed ln t - h^-b A(b),   A(b) = sum (t^b - e^b)
// over exits t and entries e (e^b = 0 without one). For each b the best scale has h^b = A / d, and
// what is left is, but for constants,
//   d (b - 1) mean_failed ln t - d ln M(b),   M(b) = A(b) / b = integral of s^(b-1) N(s) ds.
// ln M is convex (M is a moment function of the non-negative N), so this is concave in b with
// late entries too, and its slope has at most one root. Times are divided by the longest life
// first: all powers are then at most 1.
#include "query/lives/weibull_fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>
#include <optional>
#include <vector>

#include "query/lives/root_between.hpp"

namespace shoplore {
namespace {

struct LogLife {
  double exit = 0;              // ln(t / longest), at most 0
  std::optional<double> entry;  // ln(e / longest); empty as well for an entry at 0
};

struct Prepared {
  std::vector<LogLife> lives;
  double longest = 0;
  double failures = 0;
  double sum_failed = 0;  // of LogLife::exit over the failed
};

Prepared prepare(std::span<const Life> lives) {
  Prepared prepared;
  for (const Life& life : lives) prepared.longest = std::max(prepared.longest, life.exit);
  for (const Life& life : lives) {
    LogLife log{std::log(life.exit / prepared.longest), {}};
    if (life.entry && *life.entry > 0) log.entry = std::log(*life.entry / prepared.longest);
    prepared.lives.push_back(log);
    if (!life.failed) continue;
    ++prepared.failures;
    prepared.sum_failed += log.exit;
  }
  return prepared;
}

// A(b), and the slope of ln M(b) = A'(b) / A(b) - 1 / b.
struct Exposure {
  double sum = 0, slope_of_log = 0;
};

Exposure exposure_at(const Prepared& prepared, double shape) {
  double sum = 0, slope = 0;
  for (const LogLife& life : prepared.lives) {
    if (!std::isfinite(life.exit)) continue;  // an exit at 0 was never at risk
    const double exit = std::exp(shape * life.exit);
    if (!life.entry) {
      sum += exit;
      slope += exit * life.exit;
      continue;
    }
    // t^b - e^b without losing the digits they share.
    const double lived = exit * -std::expm1(shape * (*life.entry - life.exit));
    sum += lived;
    slope += lived * *life.entry + exit * (life.exit - *life.entry);
  }
  return {sum, slope / sum - 1 / shape};
}

double slope_at(const Prepared& prepared, double shape) {
  return prepared.sum_failed - prepared.failures * exposure_at(prepared, shape).slope_of_log;
}

WeibullOfShape best_of_shape(const Prepared& prepared, double shape) {
  const double d = prepared.failures;
  const double log_scale = std::log(exposure_at(prepared, shape).sum / d) / shape;
  const double sum_log = prepared.sum_failed + d * std::log(prepared.longest);
  // ln b + b (ln t - ln h) - ln t for each failure, less A / h^b = d.
  return {prepared.longest * std::exp(log_scale),
          d * std::log(shape) + shape * (prepared.sum_failed - d * log_scale) - sum_log - d};
}

// The shape at which a function that falls through 0 is 0, looked for outwards from `from`.
// Empty when that is outside the limits.
std::optional<double> falling_root(const std::function<double(double)>& function, double from) {
  double low = from, high = from;
  while (function(low) <= 0) {
    if (low <= kLeastShape) return std::nullopt;
    high = low;
    low = std::max(low / 2, kLeastShape);
  }
  while (function(high) > 0) {
    if (high >= kGreatestShape) return std::nullopt;
    low = high;
    high = std::min(high * 2, kGreatestShape);
  }
  return root_between(function, low, high);
}

// Minus the second derivatives of the log-likelihood in (ln scale, ln shape). With
// z = b (ln t - ln h) and u = e^z each life adds -(u at exit - u at entry), a failure also z.
PairCovariance information_at(const Prepared& prepared, double shape, double log_scale) {
  const double b = shape;
  PairCovariance information;
  const auto add = [&](double log_time, double sign) {
    const double z = b * (log_time - log_scale), u = std::exp(z);
    information.first += sign * b * b * u;
    information.between -= sign * b * u * (1 + z);
    information.second += sign * u * z * (1 + z);
  };
  for (const LogLife& life : prepared.lives) {
    add(life.exit, 1);
    if (life.entry) add(*life.entry, -1);
  }
  information.between += b * prepared.failures;
  information.second -= b * (prepared.sum_failed - prepared.failures * log_scale);
  return information;
}

auto no_best_shape() {
  return fail(ErrorCode::kInvalidInput, "",
              fmt::format("no Weibull shape from {} to {} fits these lives best", kLeastShape,
                          kGreatestShape));
}

}  // namespace

Result<WeibullFit> fit_weibull(std::span<const Life> lives) {
  if (const auto checked = check_lives_to_fit(lives); !checked) return fail(checked.error());
  const Prepared prepared = prepare(lives);
  const auto shape = falling_root([&](double b) { return slope_at(prepared, b); }, 1);
  if (!shape) return no_best_shape();
  const WeibullOfShape best = best_of_shape(prepared, *shape);
  const auto covariance =
      inverted(information_at(prepared, *shape, std::log(best.scale / prepared.longest)));
  if (!covariance) return no_best_shape();
  return WeibullFit{
      *shape, best.scale, best.log_likelihood, *covariance, count_failures(lives), lives.size()};
}

Estimate shape_of(const WeibullFit& fit, double confidence) {
  return estimate_on_log_scale(std::log(fit.shape), std::sqrt(fit.covariance.second), confidence);
}

Estimate scale_of(const WeibullFit& fit, double confidence) {
  return estimate_on_log_scale(std::log(fit.scale), std::sqrt(fit.covariance.first), confidence);
}

Estimate failed_by(const WeibullFit& fit, double share, double confidence) {
  assert(share > 0 && share < 1);
  // ln t = ln scale + w / shape, whose slope in ln shape is -w / shape.
  const double w = std::log(-std::log1p(-share)) / fit.shape;
  const PairCovariance& of = fit.covariance;
  const double variance = of.first - 2 * w * of.between + w * w * of.second;
  return estimate_on_log_scale(std::log(fit.scale) + w, std::sqrt(variance), confidence);
}

HazardTrend hazard_trend(const WeibullFit& fit, double confidence) {
  const Estimate shape = shape_of(fit, confidence);
  if (shape.low > 1) return HazardTrend::kRising;
  if (shape.high < 1) return HazardTrend::kFalling;
  return HazardTrend::kUndecided;
}

Estimate shape_by_likelihood(std::span<const Life> lives, const WeibullFit& fit,
                             double confidence) {
  const Prepared prepared = prepare(lives);
  const double z = two_sided_z(confidence);
  const double least = fit.log_likelihood - z * z / 2;
  const auto above = [&](double b) { return best_of_shape(prepared, b).log_likelihood - least; };
  double low = fit.shape, high = fit.shape;
  while (low > kLeastShape && above(low) > 0) low = std::max(low / 1.5, kLeastShape);
  while (high < kGreatestShape && above(high) > 0) high = std::min(high * 1.5, kGreatestShape);
  if (above(low) < 0) low = root_between(above, low, fit.shape);
  if (above(high) < 0) high = root_between(above, fit.shape, high);
  return {fit.shape, low, high};
}

Result<WeibullOfShape> fit_weibull_of_shape(std::span<const Life> lives, double shape) {
  assert(shape >= kLeastShape && shape <= kGreatestShape);
  if (const auto checked = check_lives(lives); !checked) return fail(checked.error());
  const auto at_zero = std::find_if(lives.begin(), lives.end(),
                                    [](const Life& life) { return life.failed && life.exit <= 0; });
  if (at_zero != lives.end()) {
    return fail(ErrorCode::kInvalidInput, fmt::format("life {}", at_zero - lives.begin() + 1),
                "a life to fit must be longer than 0");
  }
  if (count_failures(lives) == 0) return fail(ErrorCode::kInvalidInput, "", "none failed");
  return best_of_shape(prepare(lives), shape);
}

LifeMoments moments_of(const WeibullFit& fit) {
  const double log_mean = std::lgamma(1 + 1 / fit.shape);
  const double mean = fit.scale * std::exp(log_mean);
  // From logarithms: both terms of the variance are huge for a small shape, and equal for a large.
  return {mean, mean * std::sqrt(std::expm1(std::lgamma(1 + 2 / fit.shape) - 2 * log_mean))};
}

}  // namespace shoplore
