// The curve in one pass over the failure times, with exits and entries sorted: at risk at t are
// those that entered before t less those whose exit was before t. The sum of Greenwood's terms is
// kept beside the product.
#include "query/lives/kaplan_meier.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace shoplore {
namespace {

constexpr double kSameShare = 1e-9;

struct SortedTimes {
  std::vector<double> entries, exits, failures;
};

SortedTimes sorted_times(std::span<const Life> lives) {
  SortedTimes times;
  for (const Life& life : lives) {
    if (life.entry) times.entries.push_back(*life.entry);
    times.exits.push_back(life.exit);
    if (life.failed) times.failures.push_back(life.exit);
  }
  std::sort(times.entries.begin(), times.entries.end());
  std::sort(times.exits.begin(), times.exits.end());
  std::sort(times.failures.begin(), times.failures.end());
  return times;
}

std::uint64_t count_before(const std::vector<double>& sorted, double time) {
  return static_cast<std::uint64_t>(std::lower_bound(sorted.begin(), sorted.end(), time) -
                                    sorted.begin());
}

std::uint64_t at_risk(const SortedTimes& times, double time) {
  const std::uint64_t from_new = times.exits.size() - times.entries.size();
  return from_new + count_before(times.entries, time) - count_before(times.exits, time);
}

// Of a curve strictly between 0 and 1.
Interval band_of(double survival, double error, SurvivalBand band, double z) {
  double low = survival - z * error, high = survival + z * error;
  if (band == SurvivalBand::kLog) {
    low = survival * std::exp(-z * error / survival);
    high = survival * std::exp(z * error / survival);
  }
  if (band == SurvivalBand::kLogLog) {
    const double power = std::exp(z * error / (survival * -std::log(survival)));
    low = std::pow(survival, power);
    high = std::pow(survival, 1 / power);
  }
  return {std::max(low, 0.0), std::min(high, 1.0)};
}

std::optional<Interval> interval_of(const SurvivalStep& step, SurvivalBand band, double z) {
  if (step.survival <= 0 || step.survival >= 1) return std::nullopt;
  return band_of(step.survival, step.standard_error, band, z);
}

bool reaches(double survival, double level) {
  return survival <= level + kSameShare;
}

}  // namespace

Result<SurvivalCurve> kaplan_meier(std::span<const Life> lives) {
  if (const auto checked = check_lives(lives); !checked) return fail(checked.error());
  const SortedTimes times = sorted_times(lives);
  SurvivalCurve curve;
  curve.longest = times.exits.back();
  double survival = 1, greenwood = 0;
  for (auto from = times.failures.begin(); from != times.failures.end();) {
    const double time = *from;
    const auto until = std::upper_bound(from, times.failures.end(), time);
    const auto failed = static_cast<std::uint64_t>(until - from);
    from = until;
    const std::uint64_t exposed = at_risk(times, time);
    const auto n = static_cast<double>(exposed), d = static_cast<double>(failed);
    survival = failed == exposed ? 0 : survival * (n - d) / n;
    greenwood += survival > 0 ? d / (n * (n - d)) : 0;
    curve.steps.push_back({time, exposed, failed, survival, survival * std::sqrt(greenwood)});
  }
  return curve;
}

std::optional<SurvivalAt> survival_at(const SurvivalCurve& curve, double time, SurvivalBand band,
                                      double confidence) {
  assert(time >= 0);
  const auto next =
      std::upper_bound(curve.steps.begin(), curve.steps.end(), time,
                       [](double t, const SurvivalStep& step) { return t < step.time; });
  const SurvivalStep* step = next == curve.steps.begin() ? nullptr : &*(next - 1);
  const bool all_failed = step != nullptr && step->survival <= 0;
  if (time > curve.longest && !all_failed) return std::nullopt;
  if (step == nullptr) return SurvivalAt{};
  return SurvivalAt{step->survival, step->standard_error,
                    interval_of(*step, band, two_sided_z(confidence))};
}

SurvivalQuantile survival_quantile(const SurvivalCurve& curve, double share, SurvivalBand band,
                                   double confidence) {
  assert(share > 0 && share < 1);
  const double level = 1 - share;
  const double z = two_sided_z(confidence);
  SurvivalQuantile quantile;
  for (const SurvivalStep& step : curve.steps) {
    if (!quantile.time && reaches(step.survival, level)) quantile.time = step.time;
    const auto interval = interval_of(step, band, z);
    if (!interval) continue;
    if (!quantile.low && reaches(interval->low, level)) quantile.low = step.time;
    if (!quantile.high && reaches(interval->high, level)) quantile.high = step.time;
  }
  // Without an interval at the last step the lower edge is no later than the curve itself.
  if (!quantile.low) quantile.low = quantile.time;
  return quantile;
}

RestrictedMean restricted_mean(const SurvivalCurve& curve, double horizon) {
  assert(horizon > 0 && horizon <= curve.longest);
  // From the horizon back: the area still to come after each step weighs its Greenwood term.
  double area = 0, variance = 0, until = horizon;
  for (auto step = curve.steps.rbegin(); step != curve.steps.rend(); ++step) {
    if (step->time >= horizon) continue;
    area += step->survival * (until - step->time);
    until = step->time;
    const auto n = static_cast<double>(step->at_risk), d = static_cast<double>(step->failed);
    if (step->at_risk > step->failed) variance += area * area * d / (n * (n - d));
  }
  return {area + until, std::sqrt(variance)};
}

}  // namespace shoplore
