// Watch out, first form: repairs already made in vain, own fixes that came back, checks that
// misled us.
//
// Facts with counts, never blame. We see only vehicles that came to us: an earlier repair that
// cured never arrives, and the wording says so. Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/answer.hpp"

namespace shoplore {

// Fewer known outcomes or verdicts than this and no warning is given.
inline constexpr std::uint32_t kEnoughToWarn = 5;

// `causes` are the rows shown, leading first, with their fixes.
[[nodiscard]] Result<std::vector<Warning>> watch_out(const std::vector<EvidenceItem>& items,
                                                     const std::vector<LikelyCause>& causes,
                                                     const Filter& filter,
                                                     const CaseCounter& counter,
                                                     const Vocabulary& vocabulary);

}  // namespace shoplore
