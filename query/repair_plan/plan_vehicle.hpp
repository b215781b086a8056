// Which vehicle a repair plan is for: named by options, in words, or by a case.
//
// Only make and engine family narrow the figures; the rest is shown. A name nobody knows is refused
// rather than taken for "no such cases": known are the vocabulary's vehicle models and whatever the
// records hold. A case's own vehicle is taken as recorded.
// Threads, further errors: the counter's.
#pragma once

#include <string>

#include "indexer/case_record.hpp"
#include "indexer/recogniser.hpp"
#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

// As typed; empty: not given.
struct VehicleNaming {
  std::string make, engine_family;
  std::string words;  // "2016 Brackwater Tidal BW16D"
};

// What is given by name goes before what the words say, and that before the case's vehicle.
// kInvalidInput at "make", "engine_family" or "vehicle": a name nobody knows, or words not
// understood as part of a vehicle.
[[nodiscard]] Result<Vehicle> plan_vehicle(const VehicleNaming& naming, const Vehicle& of_case,
                                           const CaseCounter& counter, const Vocabulary& vocabulary,
                                           const Recogniser& recogniser);

}  // namespace shoplore
