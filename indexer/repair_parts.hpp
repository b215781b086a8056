// Finds the components of a note that a repair could have been done to.
//
// Those that take part in no longer finding ("battery light"), bare nouns that mean one
// (bare_parts.hpp) and those within a condition: "since new tyres" tells a repair too. Does not ask
// what was done to them (repair_links.hpp).
// Lifetime: results refer to nothing. Pure functions, any thread.
#pragma once

#include <vector>

#include "indexer/bare_parts.hpp"
#include "indexer/note_page.hpp"

namespace shoplore {

struct RepairParts {
  std::vector<PhraseMatch> parts;  // in text order
  std::vector<char> is_condition;  // by token: of a condition that holds a component
};

[[nodiscard]] RepairParts repair_parts_of(const NotePage& page, const Vocabulary& vocabulary,
                                          const BareParts& bare_parts);

}  // namespace shoplore
