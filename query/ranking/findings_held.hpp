// How many findings the cases of each cause hold, and what few known findings say by it.
//
// Asked of at any moment of the work, a case that will hold R findings is asked of with k <= R of
// them about as often as with any other number: with probability 1/R. Of a cause whose cases hold
// few findings, a question that knows few is therefore likelier:
//   scarcity_c = ln(R / R_c),  R_c = (findings of its cases + 2 R) / (n_c + 2),
// R the mean over all cases. It is taken for the same whatever k is: where a question knows more
// than the cases of a cause ever hold, the likeness to them says so. Asked of at booking in, with
// what the customer says, thin records mean nothing: so the ranking takes at most half of this
// (fit_objective.hpp). Findings are the items a case holds but for the vehicle itself and words.
// Counted over all records, without a filter. A plain value once made.
#pragma once

#include <string_view>
#include <vector>

#include "query/ranking/attribute_counts.hpp"

namespace shoplore {

[[nodiscard]] bool is_finding(std::string_view attribute);

// A case to be taken out of the counts.
struct HeldByCase {
  CauseNumber cause = 0;
  double findings = 0;
};

class FindingsHeld {
 public:
  // Of no records: every cause alike.
  FindingsHeld() = default;
  // `seen`: cases by cause.
  FindingsHeld(const std::vector<AttributeCounts>& attributes, const CasesByCause& seen);

  // By CauseNumber, of so many causes; of a cause these records did not know, 0. `left_out` may be
  // null.
  [[nodiscard]] std::vector<double> scarcity(std::size_t causes, const HeldByCase* left_out) const;

 private:
  std::vector<double> findings_, cases_;  // by CauseNumber
  double mean_ = 0;                       // R
};

}  // namespace shoplore
