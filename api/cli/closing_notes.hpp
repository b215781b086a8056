// What is asked of whoever records, while it is still remembered: on standard error, so that the
// answer stays what it is. One thread.
#pragma once

#include <ostream>
#include <string_view>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// Of a closed case, the verdicts its cause contradicts and of which nobody said yet whether they
// were right; of an unfinished one nothing, so that nobody is asked twice about a diagnosis under
// way. `verb` is the one that asks.
void ask_for_later(const Case& record, const Vocabulary& vocabulary, std::string_view verb,
                   std::ostream& err);

}  // namespace shoplore
