// How wide we looked: this engine family, this make, all vehicles; then without the least telling
// finding, until at least five cases match.
//
// Never drops the last finding that is present: an absence alone is no likeness. Does not rank.
// Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/answer.hpp"
#include "query/case_counter.hpp"
#include "query/ranking/likely_causes.hpp"

namespace shoplore {

// Fewer matching cases than this and we look wider.
inline constexpr std::uint32_t kEnoughCases = 5;

struct Breadth {
  std::vector<Width> widths;  // narrowest first; the last is the one counted by
  Tally tally;                // at the last width
};

// Items as evidence_of gives them. The ranking tells which finding is the least telling: the one
// with the smallest |weight| for the leading cause.
[[nodiscard]] Result<Breadth> look_wider(const std::vector<EvidenceItem>& items,
                                         const Filter& filter, const CaseCounter& counter,
                                         const Ranking& ranking);

}  // namespace shoplore
