#include "query/patterns/association.hpp"

#include <cassert>

namespace shoplore {

Association association_of(const DiagnosticTable& table) {
  assert(table.true_positive + table.false_positive > 0 && table.with_condition() > 0);
  const DiagnosticAccuracy accuracy = accuracy_of(table);
  const double cases = table.cases();
  Association out;
  out.support = table.true_positive / cases;
  out.confidence = accuracy.positive_value;
  out.lift = static_cast<double>(out.confidence.count) / out.confidence.out_of /
             (table.with_condition() / cases);
  out.odds_ratio = accuracy.odds_ratio;
  return out;
}

}  // namespace shoplore
