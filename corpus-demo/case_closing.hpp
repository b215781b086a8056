// What a closed case says of its cause and its repair: proof, parts, hours, costs, removals, traps,
// verification, and what else was found or declined on the way.
//
// None of it is evidence, so nothing here changes what truth.hpp computes. Outcomes and texts are
// the generator's. Threads: one per Random.
#pragma once

#include "corpus-demo/patterns.hpp"
#include "corpus-demo/random.hpp"
#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

inline constexpr double kAlsoFound = 0.06, kContributing = 0.30;  // the latter where one is known
inline constexpr double kDeclinedShare = 0.05;                    // of closed cases
// Of steps done to prove a repair: something was still wrong, put right and proved again by the
// same step; or it could not be told.
inline constexpr double kProofCatches = 0.04, kProofUnclear = 0.03;
inline constexpr double kLabourAnHour = 62;  // euro

// Requires: record.closed is set and the plan is one of the pattern's.
void write_closing(Case& record, const FailurePattern& pattern, const FixPlan& plan,
                   const Vocabulary& vocabulary, Random& random);

// Work offered and refused, with the warning where safety is concerned, dated `day`.
[[nodiscard]] Declined draw_declined(Date day, Random& random);

}  // namespace shoplore
