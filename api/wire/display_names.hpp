// Names people read for the questions that answers carry; those of causes and fixes are case_keys'.
//
// Pure functions, any thread; an id the vocabulary lacks is shown with spaces for underscores.
#pragma once

#include <string>
#include <string_view>

#include "indexer/case_keys.hpp"

namespace shoplore {

// What a check or question is called: "look into the plug wells", "ask: whistle under load?",
// "ask: duty?" of "check:...", "symptom:..." and "fact:...".
[[nodiscard]] std::string display_question(std::string_view attribute,
                                           const Vocabulary& vocabulary);

}  // namespace shoplore
