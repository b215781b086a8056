// How many repairs of a kind a vehicle has had on average by an age, when one vehicle can need it
// again and again: Nelson's mean cumulative function (Nelson, J. Quality Technology 20, 1988;
// Technometrics 37, 1995, 147).
//
// At each age the repairs are divided by the vehicles watched at that age, never by all. The
// variance lets repairs of one vehicle depend on each other (Lawless & Nadeau, Technometrics 37,
// 1995, 158); it assumes nothing about their law. It does not tell a first repair from a fifth.
//
// Plain data and pure functions, any thread. Errors, all kInvalidInput with place "vehicle 3"
// (counted from 1): none given; a time not finite or negative; entry >= exit; an event outside the
// time watched.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "indexer/result.hpp"
#include "query/intervals.hpp"
#include "query/lives/lives.hpp"

namespace shoplore {

// One vehicle, watched after `entry` (empty: from new) up to and including `exit`.
struct RepairHistory {
  double exit = 0;
  std::vector<double> events = {};  // in any order; two at one age are two
  std::optional<double> entry = {};
};

struct MeanCumulativeStep {
  double time = 0;  // an age at which there was at least one repair
  std::uint64_t at_risk = 0, events = 0;
  double mean = 0;  // repairs a vehicle up to and including this age
  // Sum over vehicles of squared [sum over ages of (its repairs - mean repairs) / watched],
  // taken over the ages at which that vehicle was watched. 0 with one vehicle: it tells nothing.
  double variance = 0;
};

struct MeanCumulative {
  std::vector<MeanCumulativeStep> steps;  // by time, which rises
  double longest = 0;                     // the longest time watched
};

[[nodiscard]] Result<MeanCumulative> mean_cumulative(std::span<const RepairHistory> histories);

// Repairs a vehicle by an age, normal on the log scale: mean exp(-+z se / mean). Empty before the
// first repair, whose interval is not known, and beyond the longest time watched.
// Requires: 0 < confidence < 1.
[[nodiscard]] std::optional<Estimate> repairs_by(const MeanCumulative& curve, double time,
                                                 double confidence = kShownConfidence);

}  // namespace shoplore
