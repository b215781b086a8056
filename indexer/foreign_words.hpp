// Words of a complaint that nobody taught the vocabulary: all a question asks of its words.
//
// The recogniser left them over and no phrase has a word of their stem. The others have become
// findings, or were said for none ("no whine", "blue light").
// Pure function, any thread.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/evidence_item.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

// As complaint_words makes them. Requires: recognised is what the recogniser read in this text.
[[nodiscard]] std::vector<EvidenceItem> foreign_words(std::string_view text,
                                                      const Recognised& recognised,
                                                      const Recogniser& recogniser);

}  // namespace shoplore
