#include "query/repair_plan/work_spread.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "query/quantile.hpp"

namespace shoplore {
namespace {

constexpr double kLow = 0.1, kMedian = 0.5, kHigh = 0.9;

std::optional<double> figure_of(const Case& record, WorkFigure figure, const Currency& currency) {
  if (!record.correction) return std::nullopt;
  const Correction& done = *record.correction;
  if (figure == WorkFigure::kCost) {
    const bool comparable = !currency.name.empty() && done.currency == currency.name;
    return comparable ? done.cost_total : std::nullopt;
  }
  if (!done.hours) return std::nullopt;
  return figure == WorkFigure::kClockedHours ? done.hours->clocked : done.hours->diagnosis;
}

bool is_inside(const PlanCase& one, VehiclesAlike vehicles, const WorkOf& work) {
  switch (vehicles) {
    case VehiclesAlike::kEngineFamily:
      return !work.engine_family.empty() && one.engine_family == work.engine_family;
    case VehiclesAlike::kMake:
      return !work.make.empty() && one.make == work.make;
    case VehiclesAlike::kAll:
      return true;
  }
  return false;
}

}  // namespace

Currency usual_currency(std::span<const PlanCase> cases) {
  std::map<std::string, std::uint32_t> counts;
  for (const PlanCase& each : cases) {
    if (each.record.correction && each.record.correction->cost_total) {
      ++counts[each.record.correction->currency];
    }
  }
  Currency usual;
  const auto unnamed = counts.find("");
  if (unnamed != counts.end()) {
    usual.unnamed = unnamed->second;
    counts.erase(unnamed);
  }
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  if (most == counts.end()) return usual;
  usual.name = most->first;
  for (const auto& [name, count] : counts) usual.in_others += name == usual.name ? 0 : count;
  return usual;
}

WorkSpread work_spread(std::span<const PlanCase> cases, WorkFigure figure, const WorkOf& work,
                       const Currency& currency) {
  WorkSpread few;  // the widest circle of the most alike work that has any value
  few.figure = figure;
  for (const auto& [alike, alike_name] : kEnumNames<WorkAlike>) {
    for (const auto& [vehicles, vehicles_name] : kEnumNames<VehiclesAlike>) {
      WorkSpread circle{figure, alike, vehicles, 0, {}, {}};
      for (const PlanCase& each : cases) {
        if (!is_inside(each, vehicles, work)) continue;
        if (alike == WorkAlike::kSameFixes && each.fixes != work.fixes) continue;
        if (const auto value = figure_of(each.record, figure, currency)) {
          circle.values.push_back(*value);
        }
      }
      circle.cases = static_cast<std::uint32_t>(circle.values.size());
      std::sort(circle.values.begin(), circle.values.end());
      if (circle.cases >= kFewestToPlan) {
        circle.spread = Spread{quantile(circle.values, kLow), quantile(circle.values, kMedian),
                               quantile(circle.values, kHigh)};
        circle.values.clear();
        return circle;
      }
      const bool as_alike = few.cases == 0 || few.work == alike;
      if (circle.cases > 0 && as_alike) few = std::move(circle);
    }
  }
  return few;
}

}  // namespace shoplore
