// What became of a check's verdicts by the condition it was done under: cold, loaded, unplugged...
//
// Conditions of checks are not indexed, so this reads every closed case once: for a list, not for
// an answer; keep it with the snapshot. Counts verdicts, not cases: a check done twice under two
// conditions is two. Knows contributing and also found causes, unlike check_trust.hpp.
// Threads, errors: the store's. Reads the records as they are now.
#pragma once

#include <string>
#include <vector>

#include "indexer/store.hpp"
#include "query/checks/check_trust.hpp"

namespace shoplore {

struct ConditionTrust {
  std::string check;      // canonical id
  std::string condition;  // canonical id; empty: none was written down
  VerdictTrust pass, fail;
  std::uint32_t unclear = 0;
  [[nodiscard]] std::uint32_t done() const { return pass.given + fail.given + unclear; }
};

// By check, then condition. A verdict under several conditions counts once under each.
[[nodiscard]] Result<std::vector<ConditionTrust>> trust_by_condition(const Store& store,
                                                                     const Vocabulary& vocabulary);

}  // namespace shoplore
