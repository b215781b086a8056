// Words of a complaint as mentions, "word:<stem>": for what the vocabulary has no entry for.
//
// A shop has words of its own. What nobody taught the vocabulary may have been written down before,
// again and again with the same cause. The index holds the words of every complaint; a question
// asks with those its recogniser left over, since the others have become findings already. They are
// no evidence_of a record: nothing is counted or mined by them, they only add to a ranking.
// Stop words, words with a digit, of fewer than 3 bytes or of more than 64 are left out.
// Pure functions, any thread.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/evidence_item.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

// Of the whole text, sorted, each once.
[[nodiscard]] std::vector<EvidenceItem> complaint_words(std::string_view text);

// Only of what was left over. Requires: recognised is what was read in this text.
[[nodiscard]] std::vector<EvidenceItem> words_left_over(std::string_view text,
                                                        const Recognised& recognised);

}  // namespace shoplore
