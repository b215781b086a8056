// The cautions that symptoms, checks done or proposed with what comes off for them, earlier repairs
// and likely causes call for.
//
// From the vocabulary alone: independent of any count, so they show when nothing matches too.
// Pure, any thread.
#pragma once

#include <vector>

#include "query/answer.hpp"

namespace shoplore {

// Each caution once, with everything that needs it; high voltage first, then the most needed.
[[nodiscard]] std::vector<Caution> cautions_for(const std::vector<EvidenceItem>& items,
                                                const std::vector<LikelyCause>& causes,
                                                const std::vector<AdvisedCheck>& checks,
                                                const Vocabulary& vocabulary);

}  // namespace shoplore
