#include "query/watch_out/at_stake.hpp"

#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

constexpr double kMinutesAnHour = 60;

double minutes_of(const RepairFigures& repair, const WorkFigures& figures) {
  const double parts = figures.hour_costs ? repair.parts / *figures.hour_costs * kMinutesAnHour : 0;
  return repair.minutes + parts;
}

}  // namespace

double minutes_of_cause(std::string_view cause_key, const WorkFigures& figures) {
  const auto found = figures.repairs.find(cause_key);
  if (found != figures.repairs.end() && found->second.cases > 0) {
    return minutes_of(found->second, figures);
  }
  return minutes_of_component(cause_parts(cause_key).component, figures);
}

double minutes_of_component(std::string_view component, const WorkFigures& figures) {
  double sum = 0, cases = 0;
  const std::string prefix = std::string(component) + ":";
  for (auto it = figures.repairs.lower_bound(prefix);
       it != figures.repairs.end() && it->first.starts_with(prefix); ++it) {
    const auto weight = static_cast<double>(it->second.cases);
    sum += weight * minutes_of(it->second, figures);
    cases += weight;
  }
  return cases > 0 ? sum / cases : kUsualRepairMinutes;
}

}  // namespace shoplore
