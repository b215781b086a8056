// How long a repair takes here and what it costs: median and the range from 10 to 90 %, from own
// cases.
//
// Counted in circles, the narrowest with kFewestToPlan cases that wrote the figure down: cases with
// the same fixes on this engine family, then on this make, then on any vehicle; then whatever was
// done for this cause, in the same three circles. An empty family or make is no circle. Where no
// circle has enough, the values of the last that has any with the same fixes (else of any) are
// listed, and nothing is summed up.
//
// Quantiles are those of quantile.hpp.
//
// Clocked hours are those of the repair alone; diagnosis is apart. Costs are what the customer was
// charged in all (cost_total), in one currency: others are counted, never converted.
// Pure functions, any thread; nothing fails.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "indexer/enum_names.hpp"
#include "query/repair_plan/plan_cases.hpp"

namespace shoplore {

enum class WorkFigure { kClockedHours, kDiagnosisHours, kCost };
template <>
inline constexpr EnumTable<WorkFigure, 3> kEnumNames<WorkFigure>{
    {{WorkFigure::kClockedHours, "clocked_hours"},
     {WorkFigure::kDiagnosisHours, "diagnosis_hours"},
     {WorkFigure::kCost, "cost"}}};

enum class WorkAlike { kSameFixes, kAnyFixes };
template <>
inline constexpr EnumTable<WorkAlike, 2> kEnumNames<WorkAlike>{
    {{WorkAlike::kSameFixes, "same_fixes"}, {WorkAlike::kAnyFixes, "any_fixes"}}};

enum class VehiclesAlike { kEngineFamily, kMake, kAll };
template <>
inline constexpr EnumTable<VehiclesAlike, 3> kEnumNames<VehiclesAlike>{
    {{VehiclesAlike::kEngineFamily, "engine_family"},
     {VehiclesAlike::kMake, "make"},
     {VehiclesAlike::kAll, "all"}}};

struct Spread {
  double low = 0, median = 0, high = 0;  // quantiles at .1, .5 and .9
};

struct WorkSpread {
  WorkFigure figure = WorkFigure::kClockedHours;
  WorkAlike work = WorkAlike::kSameFixes;
  VehiclesAlike vehicles = VehiclesAlike::kAll;
  std::uint32_t cases = 0;       // in that circle that wrote it down
  std::optional<Spread> spread;  // where they are enough
  std::vector<double> values;    // ascending; only where they are not
};

// Whose work is looked at. Names in lower case, empty where unknown.
struct WorkOf {
  std::vector<std::string> fixes;  // keys, sorted
  std::string make, engine_family;
};

// The currency most of the cases with a cost were charged in (of equals the first by name; empty
// when no case names one), and how many of them it leaves out.
struct Currency {
  std::string name;  // ISO 4217
  std::uint32_t in_others = 0, unnamed = 0;
};
[[nodiscard]] Currency usual_currency(std::span<const PlanCase> cases);

[[nodiscard]] WorkSpread work_spread(std::span<const PlanCase> cases, WorkFigure figure,
                                     const WorkOf& work, const Currency& currency);

}  // namespace shoplore
