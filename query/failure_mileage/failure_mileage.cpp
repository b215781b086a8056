#include "query/failure_mileage/failure_mileage.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

#include "query/quantile.hpp"

namespace shoplore {
namespace {

CaseMileages case_mileages(const std::vector<VehicleHistory>& histories, std::string_view cause,
                           const VehicleScope& scope) {
  CaseMileages cases;
  for (const VehicleHistory& vehicle : histories) {
    if (!scope.holds(vehicle)) continue;
    for (const PastVisit& visit : vehicle.visits) {
      if (!has_failure(visit, cause)) continue;
      ++cases.cases;
      if (visit.cause != cause) ++cases.beside_main;
      if (visit.km) cases.km.push_back(*visit.km);
    }
  }
  std::sort(cases.km.begin(), cases.km.end());
  return cases;
}

double entry_of(const Life& life) {
  return life.entry.value_or(0);
}

// Where a curve may begin: after the last failure before the most were at risk at which there were
// fewer than kFewestAtRisk; else where the first life was seen.
double start_of(const std::vector<Life>& lives, const SurvivalCurve& curve) {
  double start = std::numeric_limits<double>::infinity();
  for (const Life& life : lives) start = std::min(start, entry_of(life));
  const auto most = std::max_element(
      curve.steps.begin(), curve.steps.end(),
      [](const SurvivalStep& a, const SurvivalStep& b) { return a.at_risk < b.at_risk; });
  for (auto step = curve.steps.begin(); step != most; ++step) {
    if (step->at_risk < kFewestAtRisk) start = step->time;
  }
  return start;
}

std::vector<Life> lives_beyond(const std::vector<Life>& lives, double start) {
  std::vector<Life> beyond;
  for (Life life : lives) {
    if (life.exit <= start) continue;
    if (entry_of(life) < start) life.entry = start;
    beyond.push_back(life);
  }
  return beyond;
}

Result<FittedLife> fitted(const std::vector<Life>& lives) {
  const auto weibull = fit_weibull(lives);
  if (!weibull) return fail(weibull.error());
  FittedLife fit{*weibull, hazard_trend(*weibull), {}, {}};
  if (const auto lognormal = fit_lognormal(lives)) {
    fit.lognormal = *lognormal;
    fit.comparison = compare_forms(*weibull, *lognormal);
  }
  return fit;
}

Result<LifeAnswer> answer_for(const std::vector<Life>& lives) {
  LifeAnswer answer;
  answer.lives = lives.size();
  answer.failures = count_failures(lives);
  for (const Life& life : lives) {
    answer.km_at_risk += life.exit - entry_of(life);
    answer.longest = std::max(answer.longest, life.exit);
  }
  if (answer.failures < kFewestToFit) {
    answer.not_fitted = "too few failures";
    return answer;
  }
  const auto whole = kaplan_meier(lives);
  if (!whole) return fail(whole.error());
  answer.starts = start_of(lives, *whole);
  auto curve = kaplan_meier(lives_beyond(lives, answer.starts));
  if (!curve) return fail(curve.error());
  answer.curve = std::move(*curve);
  if (auto fit = fitted(lives)) {
    answer.fit = std::move(*fit);
  } else {
    answer.not_fitted = fit.error().message;
  }
  return answer;
}

}  // namespace

std::optional<MileageQuartiles> CaseMileages::quartiles() const {
  if (km.empty()) return std::nullopt;
  std::vector<double> ascending;
  for (const Kilometres each : km) ascending.push_back(static_cast<double>(each.value));
  const auto at = [&](double share) { return quantile(ascending, share); };
  return MileageQuartiles{at(0), at(.25), at(.5), at(.75), at(1)};
}

AgeTold age_told(const LifeAnswer& life, const Estimate& age) {
  if (!tells(age)) return AgeTold::kTooFew;
  if (age.value < life.starts) return AgeTold::kBeforeSeen;
  return age.value > life.longest ? AgeTold::kBeyondSeen : AgeTold::kTold;
}

Result<FailureMileage> failure_mileage(const std::vector<VehicleHistory>& histories,
                                       const MileageQuestion& question) {
  FailureMileage out;
  out.cause = question.cause;
  out.scope = question.scope;
  out.cases = case_mileages(histories, out.cause, question.scope);
  FailureLives lives = failure_lives(histories, out.cause, question.scope);
  out.families = std::move(lives.families);
  out.vehicles = lives.vehicles;
  out.replaced_here = lives.replaced;
  auto first = answer_for(lives.first);
  if (!first) return fail(first.error());
  out.first = std::move(*first);
  if (lives.since_replaced.size() >= kFewestReplaced) {
    auto since = answer_for(lives.since_replaced);
    if (!since) return fail(since.error());
    out.since_replaced = std::move(*since);
  }
  return out;
}

double fitted_share_whole(const LifeAnswer& answer, double km) {
  assert(answer.fit && km >= answer.starts);
  const WeibullFit& fit = answer.fit->weibull;
  const auto log_share = [&](double age) { return -std::pow(age / fit.scale, fit.shape); };
  return std::exp(log_share(km) - log_share(answer.starts));
}

}  // namespace shoplore
