// Names people read for the keys that answers carry; of causes and fixes: indexer/key_names.hpp.
//
// Pure functions, any thread; an id the vocabulary lacks is shown with spaces for underscores.
#pragma once

#include <string>
#include <string_view>

#include "indexer/key_names.hpp"

namespace shoplore {

// What a check or question is called: "look into the plug wells", "ask: whistle under load?",
// "ask: duty?" of "check:...", "symptom:..." and "fact:...".
[[nodiscard]] std::string display_question(std::string_view attribute,
                                           const Vocabulary& vocabulary);

}  // namespace shoplore
