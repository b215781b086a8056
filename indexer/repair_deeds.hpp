// Finds the words of work done in a note, and how each looks for its component.
//
// "replaced", "new", "did the ...", "... done", "put a ... in", "3 months old", "... by the
// dealer". Whether the work was only wanted is not asked here (repair_reader.hpp).
// Lifetime: results refer to nothing. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

enum class DeedForm {
  kVerb,         // within a word of its component, on either side
  kAdjective,    // beside it; belongs to what follows first
  kBeside,       // beside it, on either side ("3 months old")
  kLeadsPart,    // right before it ("did the plugs")
  kFollowsPart,  // right after it ("pads done")
  kPut           // "put a coil in", "battery he put in"
};

struct Deed {
  TokenRange at;
  std::string action;
  DeedForm form = DeedForm::kVerb;
};

// In text order, over tokens nobody claimed. parts: the components of the page in text order.
[[nodiscard]] std::vector<Deed> deeds_of(const NotePage& page, const Vocabulary& vocabulary,
                                         const std::vector<PhraseMatch>& parts);

// A fluid that was replaced was drained and refilled, whatever the note calls it; the action itself
// otherwise, and in a shop without that action.
[[nodiscard]] std::string action_on(const Vocabulary& vocabulary, const std::string& part,
                                    const std::string& action);

}  // namespace shoplore
