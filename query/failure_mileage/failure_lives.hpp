// The lives of a part, read from the visits of the vehicles that have it: what a survival curve of
// one failure is made of.
//
// A vehicle without the failure is not nothing: it has driven so far without it. Whose lives
// these are, where they begin and where they end decides the answer, so it is decided here:
//
// - The population: vehicles of the engine families in which the part was ever a cause or was
//   mended here. Another engine does not have it, and its kilometres would only flatter the part.
//   When no such case names its family, all vehicles; else those whose family is not written down
//   are left out, failed and whole alike.
// - Failed: at the first closed case of which it was the main cause, a contributing one or one
//   also found. Open cases and those ended without a cause tell neither way and are passed over.
// - Whole: until the last visit that tells, or until the part was replaced for another reason.
//   What was driven after the last visit is not known, so lives look rather shorter than they are.
// - Late entry: at risk after the km of the first visit (left truncation). Before it the vehicle
//   was somebody else's, and had it failed there nobody here would know. A vehicle that first came
//   in because of the failure therefore has no kilometres at risk: it tells at what mileage the
//   part goes, and nothing of how many live longer. It is counted apart. Counted from new, the
//   answer would follow the mix of vehicles that happen to come in: of a true shape 3 a simulated
//   workshop made 4.0 or 3.6, and 3.2 with late entry (failure_lives_test). It holds if a vehicle
//   once known comes here again when the part fails.
// - After `replace <part>` here a new life begins, at 0 km and watched from new: `since_replaced`.
//   A part replaced elsewhere is not known of and is taken for the first.
//
// A visit without km moves nothing; a failure or replacement without km ends the life at the km
// before it. Of a vehicle whose km run backwards nothing is believed.
// Plain data and pure functions, any thread; they cannot fail. Unit: km.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "query/lives/lives.hpp"
#include "query/lives/vehicle_histories.hpp"

namespace shoplore {

// Whose lives. Empty: anybody's; compared in lower case with what was last written down.
struct VehicleScope {
  std::string make, engine_family;
  [[nodiscard]] bool holds(const VehicleHistory& vehicle) const;
};

// What became of each vehicle: the numbers add up to `in_scope`.
struct VehicleCounts {
  std::uint32_t in_scope = 0;
  std::uint32_t without_part = 0;     // of an engine family that never had it
  std::uint32_t family_unknown = 0;   // not written down, where others' is
  std::uint32_t no_km = 0;            // at no visit that tells
  std::uint32_t backwards = 0;        // km that fall from one visit to the next
  std::uint32_t failed_at_first = 0;  // came in with it: nothing driven before, as far as we know
  std::uint32_t no_distance = 0;      // nothing driven between visits, as far as is known
  std::uint32_t followed = 0;         // a life each in `first`
};

struct FailureLives {
  std::vector<std::string> families;  // of the population, sorted; empty: all vehicles
  VehicleCounts vehicles;
  std::vector<Life> first;           // km on the odometer, from the first visit
  std::vector<Life> since_replaced;  // km since the part was replaced here
  // Replaced here with the km written down. A part that holds brings nobody in: the more of these
  // have no life above, the shorter the others look.
  std::uint32_t replaced = 0;
};

// Whether it was a cause of this closed case, main or not.
[[nodiscard]] bool has_failure(const PastVisit& visit, std::string_view cause_key);

// Requires: the cause key is canonical, the visits of a vehicle are in order.
[[nodiscard]] FailureLives failure_lives(const std::vector<VehicleHistory>& histories,
                                         std::string_view cause_key, const VehicleScope& scope);

}  // namespace shoplore
