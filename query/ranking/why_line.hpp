// One line of why a cause is ranked where it is, with the counts it comes from. A plain value.
#pragma once

#include <cstdint>

#include "indexer/evidence_item.hpp"

namespace shoplore {

// One line of why: what an item adds to the cause's log-odds against the background.
struct WhyLine {
  EvidenceItem item;
  double weight = 0;  // natural log; above 0 speaks for the cause
  // In this cause's cases: of those that know the attribute, but of all where a record names the
  // item whenever it is there (a symptom that is present, a mention).
  std::uint32_t with_item = 0, known = 0;
  std::uint32_t with_item_elsewhere = 0, known_elsewhere = 0;  // in all other cases
};

}  // namespace shoplore
