// The part of an answer that says what to do next: questions, checks, and whether to repair at
// once.
//
// Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/checks/check_advice.hpp"

namespace shoplore {

// Empty when there is nothing to advise. Lines end; no empty line before or after.
[[nodiscard]] std::string print_next_check(const CheckAdvice& advice, const Vocabulary& vocabulary,
                                           const Page& page);

}  // namespace shoplore
