// Recurring patterns for a terminal: kind by kind, a sentence each with its counts, and if wanted
// the cases they rest on. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "query/patterns/pattern_book.hpp"

namespace shoplore {

enum class ShowCases { kNo, kYes };

// `shown`: some of the list's patterns in their order.
[[nodiscard]] std::string print_patterns(const PatternBook& book, const PatternList& list,
                                         const std::vector<OpenedPattern>& shown, ShowCases cases,
                                         const Vocabulary& vocabulary, const Page& page);

// Of a book that is not mined: that there are too few cases, and from when it makes sense.
[[nodiscard]] std::string print_too_few_for_patterns(const PatternBook& book, const Page& page);

}  // namespace shoplore
