// Repairs of ours that came back: how often, how soon and why, and what lasted instead.
//
// Of each likely cause the fixes done together that came back most often, when that is a third of
// the outcomes known, kEnoughToWarn at least. How soon is the median of the days from closing to
// coming back, of those where the day was written down; reasons are counted as recorded, whatever
// they say of our own work. The fix named as lasting came back in less than a third and is the one
// best proved to last. Outcomes nobody heard of count neither way.
// Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

[[nodiscard]] Result<std::vector<Warning>> warn_of_own_comebacks(const WatchQuestion& question);

}  // namespace shoplore
