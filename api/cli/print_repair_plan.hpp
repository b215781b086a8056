// A repair plan for a terminal, in the order in which it is worked off: what to do, parts to order,
// time and cost, what comes off, cautions, traps, what it needs afterwards, how to prove it cured;
// what speaks for it comes last. Pure function, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/repair_plan/repair_plan.hpp"

namespace shoplore {

// Of a cause never seen here: that it is, and what to do instead.
[[nodiscard]] std::string print_repair_plan(const RepairPlan& plan, const Vocabulary& vocabulary,
                                            const Page& page);

}  // namespace shoplore
