// What the customer is asked to sign before a repair, as one page to print: apart from the plan,
// because none of the workshop's own counts belong on it.
//
// It says vehicle, job number, complaint, what was checked and what came of it, the work proposed,
// its parts, what it may cost and what could change that, and leaves room for yes or no, a name, a
// date and a signature. It holds no percentages, no counts of cases, no ids, refs or engine
// families, nothing of another customer's case but the range of time and cost, and of parts only
// names the vocabulary knows: what somebody once wrote down may name a brand. Names and
// registration are left to be filled in by hand: none are recorded.
// One HTML document in UTF-8, readable in black and white; no script, nothing loaded from
// elsewhere; every text escaped.
// Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>

#include "query/repair_plan/repair_plan.hpp"

namespace shoplore {

// kNotFound when the plan proposes nothing (cause never seen here, or no fix written down);
// kConflict when the case is neither open nor waiting: an approval is asked for before the work.
// Requires: the plan was made for this case.
[[nodiscard]] Result<std::string> approval_html(const RepairPlan& plan, const Case& record,
                                                const Vocabulary& vocabulary);

}  // namespace shoplore
