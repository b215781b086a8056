// The answer as text for a person at a terminal.
//
// Shows what the object holds and computes nothing of its own but layout; long lists are cut and
// say how much was left out (the JSON has all). No line is wider than the page. Every percentage
// stands beside its counts.
// Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/answer.hpp"

namespace shoplore {

[[nodiscard]] std::string print_answer(const Answer& answer, const Vocabulary& vocabulary,
                                       const Page& page);

// What stands below every answer: that counts are evidence, and as of when.
[[nodiscard]] std::string print_note(const Answer& answer, const Page& page);

// The interval of a share drawn from 0 to 1 in `columns` columns and two ends:
// "|----===o====--|", '=' inside the interval, 'o' at the share itself.
[[nodiscard]] std::string interval_bar(const Share& share, std::size_t columns);

}  // namespace shoplore
