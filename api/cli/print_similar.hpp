// Past cases found by their words, as text: one block a case, matching words marked.
//
// Marks are bold with colour, *asterisks* without. Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {

[[nodiscard]] std::string print_similar(const SimilarCase& similar, const Vocabulary& vocabulary,
                                        const Page& page);

// With how to get the next page when there is one.
[[nodiscard]] std::string print_search_page(const SearchPage& found, const Vocabulary& vocabulary,
                                            const Page& page);

// The snippet with its marks. Requires: spans in order, apart, within the text.
[[nodiscard]] std::string marked_text(const Snippet& snippet, const Ink& ink);

// "stayed fixed", "came back", "not heard of".
[[nodiscard]] std::string outcome_text(OutcomeStatus outcome);

}  // namespace shoplore
