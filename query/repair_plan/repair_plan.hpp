// The repair plan of a cause: what was done, what lasted, what it takes, what comes off, what to
// beware of and how to prove it cured, all from own past cases and the vocabulary.
//
// One object that text, JSON, HTTP and the customer's approval are made from. It is counted, not
// prescribed: the work proposed is the one among those done here that lasted most surely, and what
// was never recorded is not there. Kaplan-Meier shares are stayed_fixed.hpp's.
// Proposed is, of what was done together in at least one case,
// - the one whose share still fixed after kProposedAfter has the highest lower end of its interval,
//   where any has such a share; else
// - the one with the highest lower end of the 90 % Jeffreys interval of "still fixed" among those
//   heard of, where any was heard of kFewestToPlan times; else
// - the one done most often.
// Cost: reads every record once for how long repairs lasted (vehicle_histories.hpp).
// Plain values. Threads: any number of readers of one snapshot; the store is one thread's.
// Fails with kInvalidInput at "cause", "make", "engine_family", "vehicle" or "open", kNotFound for
// an unknown case. A cause never seen is no error: then `cases` is 0.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "indexer/recogniser.hpp"
#include "query/answer.hpp"
#include "query/cause_words.hpp"
#include "query/outcomes/stayed_fixed.hpp"
#include "query/repair_plan/around_the_fix.hpp"
#include "query/repair_plan/parts_together.hpp"
#include "query/repair_plan/plan_vehicle.hpp"
#include "query/repair_plan/work_spread.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

struct PlanQuestion {
  std::string cause;           // a key or plain words
  VehicleNaming vehicle;       // narrows hours and costs
  std::string case_ref;        // its vehicle, symptoms and checks are taken; may be empty
  std::set<std::string> open;  // removals that are off already
};

inline constexpr std::chrono::days kProposedAfter{365};

enum class ProposedBecause { kLastedAYear, kLastedAsHeard, kDoneMost };
template <>
inline constexpr EnumTable<ProposedBecause, 3> kEnumNames<ProposedBecause>{
    {{ProposedBecause::kLastedAYear, "lasted_a_year"},
     {ProposedBecause::kLastedAsHeard, "lasted_as_heard"},
     {ProposedBecause::kDoneMost, "done_most"}}};

struct ProposedWork {
  std::vector<std::string> fixes;  // keys done together, sorted
  ProposedBecause because = ProposedBecause::kDoneMost;
  std::uint32_t cases = 0;  // in which exactly this was done
};

struct RepairPlan {
  NamedCause cause;
  Vehicle vehicle;
  std::string case_ref;
  std::uint32_t cases = 0, vehicles = 0;  // of this cause, all circles together
  std::optional<ProposedWork> proposed;   // nothing where no fix was ever written down
  std::vector<StayedFixed> fixes;         // what was done together, most cases first
  RepeatComebacks repeats;                // whatever was done
  std::vector<FixCompany> beside;         // of the proposed fixes
  std::vector<MissedPart> missed;
  PartsUsed parts;  // of the proposed work
  Currency currency;
  std::vector<WorkSpread> work;  // clocked hours, diagnosis, cost
  RemovalPlan removals;          // of the proposed work, else of any
  AfterwardsNeeds afterwards;
  std::vector<Caution> cautions;  // what forbids to go on first
  std::vector<Trap> traps;
  std::vector<ProofStep> proof;
  Revision revision;
  std::uint32_t cases_in_records = 0;
};

// The proposed fixes as people list them: what is done to the failed part itself before what goes
// with it, so "replace brake pipe" before "bleed brake fluid". Requires: something is proposed.
[[nodiscard]] std::vector<std::string> proposed_in_order(const RepairPlan& plan);

[[nodiscard]] Result<RepairPlan> repair_plan(const PlanQuestion& question, const Snapshot& snapshot,
                                             const Store& store, const Vocabulary& vocabulary,
                                             const Recogniser& recogniser);

}  // namespace shoplore
