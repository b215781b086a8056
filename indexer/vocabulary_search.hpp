// Looking entries up by what a person types: part of a name, of a phrase or of an id.
//
// An entry is found when every word looked for, or its stem, begins a word of its id, name, phrases
// or expansion: "linkag hand" finds "move the wastegate linkage by hand".
// Retired entries and aliases are found too: a record may hold their ids.
// Pure; any thread. The pointers live as long as the vocabulary.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

// Those whose id or name is what was looked for first, then by kind and id. Words empty: every
// entry; no kind: of all kinds.
[[nodiscard]] std::vector<const Entry*> search_vocabulary(const Vocabulary& vocabulary,
                                                          std::optional<EntryKind> kind,
                                                          std::string_view words);

}  // namespace shoplore
