// What was understood of a question, as text: vehicle and codes, then findings, then the words
// that were not understood. Pure, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/answer.hpp"

namespace shoplore {

[[nodiscard]] std::string print_understood(const Understood& understood,
                                           const Vocabulary& vocabulary, const Page& page);

}  // namespace shoplore
