// Judging a check's trust: of the times it gave one verdict and it is known what became of it, in
// what share did that verdict mislead us?
//
// Scored against the shop's own counts, not against one number: within the 90 % Jeffreys interval
// of the counted share is all that can be known, and full points; every percentage point outside
// costs kPointsPerPercent. Counts as in checks/check_trust.hpp.
// Pure but for the counter. Errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"
#include "query/share.hpp"

namespace shoplore {

// Verdicts with a known end that a question needs.
inline constexpr std::uint32_t kFewestVerdicts = 10;
inline constexpr double kPointsPerPercent = 4;

struct TrustQuestion {
  std::string subject;  // "boost_vacuum=pass": check id and verdict
  Share misled;         // of the verdicts known
};

// All that can be asked, by subject.
[[nodiscard]] Result<std::vector<TrustQuestion>> trust_questions(const CaseCounter& counter,
                                                                 const Vocabulary& vocabulary);

// 0 to 100, of a percentage said.
[[nodiscard]] double points_of_trust(double percent, const Share& misled);

}  // namespace shoplore
