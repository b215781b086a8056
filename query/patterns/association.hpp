// How strongly a set of findings and an outcome go together, from one 2x2 table.
//
// The table is diagnostic_table.hpp's: positive is "the whole set holds", the condition is the
// outcome. Names as in the literature of association rules (Tan, Steinbach & Kumar, Introduction to
// Data Mining, ch. 6). Confidence high and lift below 1 is possible: the outcome is then common
// anyway, and rarer with the set than without.
// Pure function, any thread; it cannot fail. Requires: a case with the set, one with the outcome.
#pragma once

#include <optional>

#include "query/checks/diagnostic_table.hpp"

namespace shoplore {

struct Association {
  double support = 0;               // with set and outcome, of all cases of the table
  Share confidence;                 // with the outcome, of those with the set; 90 % Jeffreys
  double lift = 1;                  // confidence over the share of the outcome in the whole table
  std::optional<Ratio> odds_ratio;  // Woolf; none when every case of the table has the outcome
};

[[nodiscard]] Association association_of(const DiagnosticTable& table);

}  // namespace shoplore
