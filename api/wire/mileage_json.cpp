#include "api/wire/mileage_json.hpp"

#include "api/wire/estimate_form.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/json_form.hpp"

namespace shoplore {
namespace {

constexpr double kFirstTenth = .1, kHalf = .5;

Json age_form(const LifeAnswer& life, const Estimate& age) {
  Json form = estimate_form(age);
  form["told"] = name_of(age_told(life, age));
  return form;
}

Json cases_form(const CaseMileages& cases) {
  Json form{{"count", cases.cases},
            {"beside_main", cases.beside_main},
            {"mileage_known", cases.km.size()},
            {"quartiles_km", nullptr}};
  if (const auto quartiles = cases.quartiles()) {
    form["quartiles_km"] = {{"least", quartiles->least},
                            {"quarter", quartiles->quarter},
                            {"half", quartiles->half},
                            {"three_quarters", quartiles->three_quarters},
                            {"greatest", quartiles->greatest}};
  }
  return form;
}

Json vehicles_form(const VehicleCounts& vehicles) {
  return {{"in_scope", vehicles.in_scope},
          {"without_part", vehicles.without_part},
          {"family_unknown", vehicles.family_unknown},
          {"no_km", vehicles.no_km},
          {"backwards", vehicles.backwards},
          {"failed_at_first", vehicles.failed_at_first},
          {"no_distance", vehicles.no_distance},
          {"followed", vehicles.followed}};
}

Json curve_form(const std::optional<SurvivalCurve>& curve) {
  Json list = Json::array();
  if (!curve) return list;
  for (const SurvivalStep& step : curve->steps) {
    Json form{{"km", step.time},
              {"at_risk", step.at_risk},
              {"failed", step.failed},
              {"survival", step.survival},
              {"standard_error", step.standard_error},
              {"low", nullptr},
              {"high", nullptr}};
    const auto at = survival_at(*curve, step.time);
    if (at && at->interval) {
      form["low"] = at->interval->low;
      form["high"] = at->interval->high;
    }
    list.push_back(std::move(form));
  }
  return list;
}

std::string trend_name(HazardTrend trend) {
  switch (trend) {
    case HazardTrend::kRising:
      return "rising";
    case HazardTrend::kFalling:
      return "falling";
    case HazardTrend::kUndecided:
      break;
  }
  return "undecided";
}

Json weibull_form(const LifeAnswer& life) {
  const FittedLife& fit = *life.fit;
  return {{"shape", estimate_form(shape_of(fit.weibull))},
          {"scale_km", estimate_form(scale_of(fit.weibull))},
          {"b10_km", age_form(life, failed_by(fit.weibull, kFirstTenth))},
          {"b50_km", age_form(life, failed_by(fit.weibull, kHalf))},
          {"log_likelihood", fit.weibull.log_likelihood},
          {"hazard", trend_name(fit.trend)}};
}

Json lognormal_form(const LifeAnswer& life) {
  const LognormalFit& fit = *life.fit->lognormal;
  return {{"log_mean", fit.log_mean},
          {"log_deviation", estimate_form(log_deviation_of(fit))},
          {"b10_km", age_form(life, failed_by(fit, kFirstTenth))},
          {"b50_km", age_form(life, failed_by(fit, kHalf))},
          {"log_likelihood", fit.log_likelihood}};
}

Json life_form(const LifeAnswer& life) {
  Json form{{"lives", life.lives},
            {"failures", life.failures},
            {"km_at_risk", life.km_at_risk},
            {"longest_km", life.longest},
            {"starts_km", life.starts},
            {"curve", curve_form(life.curve)},
            {"weibull", nullptr},
            {"lognormal", nullptr},
            {"better", nullptr},
            {"lead", nullptr},
            {"not_fitted", life.not_fitted}};
  if (life.fit) form["weibull"] = weibull_form(life);
  if (life.fit && life.fit->lognormal) {
    const FormComparison& comparison = *life.fit->comparison;
    form["lognormal"] = lognormal_form(life);
    form["better"] = comparison.better == LifeForm::kWeibull ? "weibull" : "lognormal";
    form["lead"] = comparison.lead;
  }
  return form;
}

}  // namespace

std::string mileage_json(const FailureMileage& answer) {
  const CauseParts cause = cause_parts(answer.cause);
  return Json{
      {"component", cause.component},
      {"failure", cause.failure},
      {"make", answer.scope.make},
      {"engine_family", answer.scope.engine_family},
      {"cases", cases_form(answer.cases)},
      {"engine_families", answer.families},
      {"vehicles", vehicles_form(answer.vehicles)},
      {"from_first_visit", life_form(answer.first)},
      {"replaced_here", answer.replaced_here},
      {"since_replaced", answer.since_replaced ? life_form(*answer.since_replaced) : Json(nullptr)}}
      .dump();
}

}  // namespace shoplore
