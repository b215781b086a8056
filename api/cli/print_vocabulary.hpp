// Vocabulary entries as text for a person. Pure functions, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary_edit.hpp"
#include "indexer/vocabulary_search.hpp"

namespace shoplore {

// One line an entry: kind, id, name, and the phrase that matched when it is not the name; retired
// entries and aliases say so. A last line when there are more than shown.
[[nodiscard]] std::string print_matches(const VocabularyMatches& found, const Page& page);

// Every field that is filled, ids with their names.
[[nodiscard]] std::string print_entry(const Entry& entry, EntryOrigin origin,
                                      const Vocabulary& vocabulary, const Page& page);

// What changed, where it was written, and what follows from it.
[[nodiscard]] std::string print_edit(const EditReport& report, const Page& page);

}  // namespace shoplore
