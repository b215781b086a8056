// Checks whose verdict misled us: a pass although it was this cause, a fail although it was not.
//
// Pass: of a likely cause the checks that tell about its component; of their clear verdicts on
// cases of it, how many passed and were said later to have misled. Fail: of the checks that tell
// about a likely cause's component, and of those that the question says have failed; of all their
// fails of which the truth is known, how many were said to have misled. Both have to stand out
// (stands_out.hpp) against how often such verdicts mislead here at all. An unclear verdict neither
// misleads nor can be trusted. How the check is done goes with the warning: most misled looks are
// looks done in a hurry.
// Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

[[nodiscard]] Result<std::vector<Warning>> warn_of_misleading_checks(const WatchQuestion& question);

}  // namespace shoplore
