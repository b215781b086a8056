// An apprentice's progress for a terminal: what was practised, how far percentages can be trusted
// as a plot, what is mastered, to learn and weak. Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/practice/practice_progress.hpp"

namespace shoplore {

[[nodiscard]] std::string print_progress(const PracticeProgress& progress,
                                         const Vocabulary& vocabulary, const Page& page);

}  // namespace shoplore
