// What is seen more or less often lately, as text.
//
// Pure function, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/lately/lately_view.hpp"

namespace shoplore {

// Of what `view` left. When that is nothing: one sentence.
[[nodiscard]] std::string print_lately(const Lately& seen, const LatelyView& view,
                                       const Vocabulary& vocabulary, const Page& page);

}  // namespace shoplore
