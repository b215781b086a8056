// Trust in checks for a terminal: what became of verdicts, how well a fail tells the cause, and
// verdicts by condition. Checks done seldom are only counted. Pure function, any thread.
#pragma once

#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "query/checks/trust_by_condition.hpp"

namespace shoplore {

[[nodiscard]] std::string print_check_trust(const std::vector<CheckTrust>& checks,
                                            const std::vector<ConditionTrust>& conditions,
                                            const Vocabulary& vocabulary, const Page& page);

}  // namespace shoplore
