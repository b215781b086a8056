// What the records hold of every attribute, by cause: one pass for all that is said of attributes
// as a whole. Without a filter, no case left out, hindsight and words not among them.
//
// Errors: the counter's.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "query/case_counter.hpp"

namespace shoplore {

using CasesByCause = std::vector<std::uint32_t>;  // by CauseNumber

struct AttributeCounts {
  std::string attribute;
  std::vector<CasesByCause> with;  // by value the records hold
  CasesByCause known;              // where any value is; all cases for a mention
  double values = 2;               // possible ones (case_counter.hpp)
};

// Sorted by attribute.
[[nodiscard]] Result<std::vector<AttributeCounts>> attribute_counts(const CaseCounter& counter);

[[nodiscard]] double sum_of_cases(const CasesByCause& cases);

}  // namespace shoplore
