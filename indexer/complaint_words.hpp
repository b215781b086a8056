// Words of a complaint as mentions, "word:<stem>": for what the vocabulary has no entry for.
//
// A shop has words of its own. What nobody taught the vocabulary may have been written down before,
// again and again with the same cause. The index holds the words of every complaint; a question
// asks with a few of them only (foreign_words.hpp). The words the index is searched by will not do:
// they are of notes and correction too, which nobody knows at booking in. Words are no evidence_of
// a record: nothing is counted or mined by them, they only add to a ranking.
// Left out are stop words, what stands for a removed identity, stems with a digit or of fewer than
// 3 bytes, and words of more than 64.
// Pure function, any thread.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/evidence_item.hpp"

namespace shoplore {

// Of the whole text, sorted, each once.
[[nodiscard]] std::vector<EvidenceItem> complaint_words(std::string_view text);

}  // namespace shoplore
