// Causes that came with another one behind them: what helped to bring them about.
//
// Of the cases of a likely cause, how many wrote that contributing cause down. It has to stand out
// (stands_out.hpp) against how often it contributes to all other causes. Not written down is not
// "there was none": the share is what was written down, and the true one is at least that.
// Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

[[nodiscard]] Result<std::vector<Warning>> warn_of_contributing_causes(
    const WatchQuestion& question);

}  // namespace shoplore
