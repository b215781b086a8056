// Visits of one vehicle given outright: for tests of what became of repairs.
#pragma once

#include <string>
#include <vector>

#include "query/lives/vehicle_histories.hpp"

namespace shoplore::testing {

inline Date day(const char* text) {
  return parse_date(text).value();
}

inline const std::string kLinkage = "wastegate_linkage:seized_open";
inline const std::string kTurbo = "turbocharger:worn";

// Lack of power, closed the day it was opened with a new linkage.
inline PastVisit repaired(const std::string& ref, const char* opened, std::int64_t km) {
  PastVisit visit;
  visit.id = CaseId{1};
  visit.ref = ref;
  visit.opened = day(opened);
  visit.closed = visit.opened;
  visit.km = Kilometres{km};
  visit.symptoms = {"lack_of_power"};
  visit.codes = {"P0299"};
  visit.cause = kLinkage;
  visit.fixes = {"replace wastegate_linkage"};
  return visit;
}

inline PastVisit service(const char* opened, std::int64_t km) {
  PastVisit visit;
  visit.ref = std::string("service-") + opened;
  visit.state = CaseState::kNoComplaint;
  visit.kind = VisitKind::kService;
  visit.opened = day(opened);
  visit.km = Kilometres{km};
  return visit;
}

inline PastVisit complaint(const std::string& ref, const char* opened, std::int64_t km,
                           std::vector<std::string> symptoms) {
  PastVisit visit;
  visit.ref = ref;
  visit.state = CaseState::kOpen;
  visit.opened = day(opened);
  visit.km = Kilometres{km};
  visit.symptoms = std::move(symptoms);
  return visit;
}

// Requires: `visits` by day opened.
inline VehicleHistory vehicle(std::vector<PastVisit> visits, std::string token = {}) {
  VehicleHistory history;
  history.token = token.empty() ? std::string(32, 'a') : std::move(token);
  history.make = "brackwater";
  history.engine_family = "bw16d";
  history.visits = std::move(visits);
  return history;
}

}  // namespace shoplore::testing
