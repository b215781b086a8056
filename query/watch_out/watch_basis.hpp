// What every question about warnings needs of the records as a whole, worked out once a snapshot.
//
// Which repairs, signs, contributing causes and brands there are, how many cases of each cause have
// them, and how often checks mislead at all. Unfiltered: a filter narrows what a warning counts,
// while the others it is compared with stay the shop's whole experience.
// Plain values once made. Errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

struct ItemByCause {
  EvidenceItem item;
  std::vector<std::uint32_t> cases;  // by CauseNumber
  std::uint32_t total = 0;
};

struct WatchBasis {
  std::vector<std::uint32_t> seen;    // cases, by CauseNumber
  std::vector<std::uint32_t> asked;   // where earlier repairs were asked about
  std::vector<std::uint32_t> looked;  // where signs of earlier work were looked for
  std::vector<ItemByCause> earlier_repairs, work_signs, contributing, brands;
  double pass_misled = 0;  // of clear verdicts by checks on causes they tell about: passes
  double fail_misled = 0;  // of fails of which the truth is known
};

[[nodiscard]] Result<WatchBasis> watch_basis(const CaseCounter& counter,
                                             const Vocabulary& vocabulary);

}  // namespace shoplore
