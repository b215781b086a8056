// Spotting the vain repair: of what was done here for one cause, which came back most?
//
// Only repairs with enough known outcomes are offered, and only where one came back in a third of
// them or more and another less than half as often: else there is nothing to spot. Counts are of
// this shop's own repairs; what it never saw again is not counted (fix_counts.hpp).
// Points: 100 times the chosen repair's share of comebacks over the largest.
// Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "query/case_counter.hpp"
#include "query/share.hpp"

namespace shoplore {

// Known outcomes a repair needs to be offered.
inline constexpr std::uint32_t kFewestOutcomes = 5;
inline constexpr std::size_t kMostRepairsOffered = 4;

struct RepairChoice {
  std::string fixes;  // fix keys done together, joined by "+"
  Share came_back;    // of known outcomes
};

// What can be offered for the cause, the one that came back most first; empty when there is nothing
// to spot.
[[nodiscard]] std::vector<RepairChoice> repairs_to_tell_apart(
    const std::vector<ProfileCount>& profiles, const std::string& cause);

[[nodiscard]] double points_of_repair(const RepairChoice& chosen, const RepairChoice& worst);

}  // namespace shoplore
