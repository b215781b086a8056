// The vocabulary's names as words that are never taken for a plate or a customer.
//
// Pure, any thread.
#pragma once

#include "indexer/vocabulary.hpp"
#include "indexer/words_to_keep.hpp"

namespace shoplore {

// Ids, names, makes and engine families of every entry.
[[nodiscard]] WordsToKeep vocabulary_words(const Vocabulary& vocabulary);

}  // namespace shoplore
