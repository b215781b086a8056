// Vehicle histories written as short lists, for tests of lives.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "query/lives/vehicle_histories.hpp"

namespace shoplore::testing {

inline const std::string kLinkage = "wastegate_linkage:seized_open";
inline const std::string kHose = "charge_air_hose:split";

struct Told {
  std::string what;  // "service", "open", "ended", a cause key, or "" for a cause unknown
  std::optional<std::int64_t> km;
  std::vector<std::string> fixes = {};
  std::vector<std::string> others = {};
};

// One visit a month, in order.
inline VehicleHistory vehicle_told(const std::string& family, const std::vector<Told>& visits) {
  VehicleHistory vehicle;
  vehicle.token = "t";
  vehicle.make = "brackwater";
  vehicle.engine_family = family;
  int month = 0;
  for (const Told& told : visits) {
    PastVisit visit;
    visit.state = told.what == "service" ? CaseState::kNoComplaint
                  : told.what == "open"  ? CaseState::kOpen
                  : told.what == "ended" ? CaseState::kEnded
                                         : CaseState::kClosed;
    if (visit.state == CaseState::kClosed) visit.cause = told.what;
    visit.opened = Date{std::chrono::sys_days(std::chrono::days(19'000 + 30 * month++))};
    if (told.km) visit.km = Kilometres{*told.km};
    visit.fixes = told.fixes;
    visit.other_causes = told.others;
    vehicle.visits.push_back(std::move(visit));
  }
  return vehicle;
}

}  // namespace shoplore::testing
