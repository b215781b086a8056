// Practice for a terminal: a round, what a step brought, feedback.
// Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/practice/practice_desk.hpp"

namespace shoplore {

// The round as it stands; steps taken too.
[[nodiscard]] std::string print_round(const RoundView& round, const Vocabulary& vocabulary,
                                      const Page& page);

// What the last step brought.
[[nodiscard]] std::string print_last_step(const RoundView& round, const Vocabulary& vocabulary,
                                          const Page& page);

[[nodiscard]] std::string print_feedback(const PracticeDesk::Committed& committed,
                                         const Vocabulary& vocabulary, const Page& page);

// The lines a round takes (practice_line.hpp).
[[nodiscard]] std::string print_practice_help(PracticeKind kind, const Page& page);

}  // namespace shoplore
