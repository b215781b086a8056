// What surrounds the repair itself, counted over past cases: what comes off first, what the repair
// needs afterwards, what tripped us up, and how it was proved.
//
// Removals are the list most cases of the same work had, in its order; those of other cases are
// named apart. Minutes are the vocabulary's: no case says how long a removal took. What a component
// commonly needs afterwards is the vocabulary's too ("common practice, no source"); what was done
// beside the fix is counted. Traps are grouped when they differ by case, spaces or punctuation
// only. A step of the proof caught something when a case has a fail of it, whatever came after.
// Pure functions, any thread; nothing fails.
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/repair_plan/parts_together.hpp"
#include "query/repair_plan/plan_cases.hpp"
#include "query/share.hpp"

namespace shoplore {

enum class RemovalNow { kToTakeOff, kOffAlready };
template <>
inline constexpr EnumTable<RemovalNow, 2> kEnumNames<RemovalNow>{
    {{RemovalNow::kToTakeOff, "to_take_off"}, {RemovalNow::kOffAlready, "off_already"}}};

struct PlannedRemoval {
  std::string id;
  std::optional<double> minutes;  // the vocabulary's
  std::uint32_t cases = 0;        // that had it
  RemovalNow now = RemovalNow::kToTakeOff;
};

struct RemovalPlan {
  std::uint32_t out_of = 0;                // cases with a list of removals
  std::vector<PlannedRemoval> in_order;    // outermost first, each once
  std::vector<PlannedRemoval> also_found;  // in other cases only; most cases first
  double minutes = 0;                      // of in_order, without those off already
};
[[nodiscard]] RemovalPlan removals_for(std::span<const PlanCase* const> cases,
                                       const std::set<std::string>& open,
                                       const Vocabulary& vocabulary);

struct CommonNeed {
  std::string component;  // id
  std::string text;
};
struct AfterwardsNeeds {
  std::vector<CommonNeed> common;  // of the fixes' components, in their order
  std::uint32_t out_of = 0;        // cases with fixes
  // Fixes by which something was taught, set or bled beside another: relearn, calibrate, bleed,
  // code in, reprogram, align.
  std::vector<FixInCases> done;
};
[[nodiscard]] AfterwardsNeeds afterwards_of(std::span<const PlanCase> cases,
                                            const std::vector<std::string>& fixes,
                                            const Vocabulary& vocabulary);

struct Trap {
  std::string text;               // as most cases wrote it
  std::vector<std::string> refs;  // of the cases, in the order recorded
};
// Most cases first, then as first recorded.
[[nodiscard]] std::vector<Trap> traps_of(std::span<const PlanCase> cases);

struct ProofStep {
  std::string id;  // of a verification
  Share caught;    // of the cases in which it was done
};
// Standing before driven, the yard before the road; of these most often done first, then by id.
[[nodiscard]] std::vector<ProofStep> proof_steps(std::span<const PlanCase> cases,
                                                 const Vocabulary& vocabulary);

}  // namespace shoplore
