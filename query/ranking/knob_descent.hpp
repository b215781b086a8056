// Where the fit's objective is least, and how sure the ranking may be there.
//
// The knobs go downhill together along the gradient of fit_objective.hpp with a BFGS of little
// memory (Nocedal 1980, by NLopt), within their ranges. Threads: any, each its own.
#pragma once

#include <vector>

#include "query/ranking/fit_objective.hpp"

namespace shoplore {

// From these knobs on; their smoothing and sureness stay. No worse than they are. Requires: at
// least one question.
[[nodiscard]] RankingKnobs descend(const std::vector<FitQuestion>& questions,
                                   const RankingKnobs& start);

// How much surer the ranking is of its first cause than it is right, on average.
[[nodiscard]] double excess_sureness(const std::vector<FitQuestion>& questions,
                                     const RankingKnobs& knobs);

// The sureness from .5 to 1.5 at which there is none; as it was where it changes nothing.
[[nodiscard]] double balanced_sureness(const std::vector<FitQuestion>& questions,
                                       RankingKnobs knobs);

}  // namespace shoplore
