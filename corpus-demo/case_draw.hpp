// The evidence of one case, drawn from its pattern as world.hpp says.
//
// Fills vehicle, symptoms, codes, checks, earlier repairs and work signs; texts, dates, cause and
// outcome are the generator's. Each piece is drawn independently given the pattern.
// Threads: one per Random.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "corpus-demo/random.hpp"
#include "corpus-demo/world.hpp"
#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// A vehicle as the generator knows it, whatever the record keeps of it.
struct DemoVehicle {
  std::string token;  // 32 hex digits, made up
  std::size_t family = 0, model = 0;
  int model_year = 2015;
  Kilometres mileage;
  std::vector<std::size_t> facts;  // numbers of the values, in the order of World::facts
  Date seen;                       // last at the workshop
};

// The failed repair a comeback carries: a plan of the same pattern, done here.
struct FailedRepair {
  const FixPlan* plan = nullptr;
  Date done;
  Kilometres driven_since;
};

// How fully the next case will be written up.
[[nodiscard]] const Recording& draw_recording(Random& random);

// A vehicle that has this pattern on that day; model year follows from mileage and day.
[[nodiscard]] DemoVehicle draw_vehicle(const World& world, const FailurePattern& pattern, Date day,
                                       Random& random);

// A mileage inside one of the bands, by weight.
[[nodiscard]] Kilometres draw_mileage(const BandWeights& weights, Random& random);

// What the record keeps of the vehicle and of how it lives.
void write_vehicle(Case& record, const World& world, const DemoVehicle& vehicle, Random& random);

// Symptoms with conditions, codes, earlier repairs: what is known when the vehicle is booked in.
// `failed` is null unless the case is a comeback. Requires: record.opened is set.
void draw_complaint(Case& record, const World& world, const FailurePattern& pattern,
                    const FailedRepair* failed, const Recording& recording, Random& random);

// Checks and signs of earlier work: what the workshop found. A verdict that contradicts the cause
// is marked as having misled: a pass by a check that tells about the component, a fail by one
// that does not.
void draw_findings(Case& record, const World& world, const FailurePattern& pattern,
                   const EngineFamily& family, const Vocabulary& vocabulary,
                   const Recording& recording, Random& random);

}  // namespace shoplore
