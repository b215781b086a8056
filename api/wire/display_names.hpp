// Names people read for the keys that answers carry.
//
// Pure functions, any thread; an id the vocabulary lacks is shown with spaces for underscores.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

// "wastegate linkage, seized open".
[[nodiscard]] std::string display_cause(std::string_view component, std::string_view failure,
                                        const Vocabulary& vocabulary);

// "replace wastegate linkage" of the fix key "replace wastegate_linkage".
[[nodiscard]] std::string display_fix(std::string_view fix_key, const Vocabulary& vocabulary);

// Fixes done together, joined with " + ".
[[nodiscard]] std::string display_fixes(const std::vector<std::string>& fix_keys,
                                        const Vocabulary& vocabulary);

// What a check or question is called: "look into the plug wells", "ask: whistle under load?",
// "ask: duty?" of "check:...", "symptom:..." and "fact:...".
[[nodiscard]] std::string display_question(std::string_view attribute,
                                           const Vocabulary& vocabulary);

}  // namespace shoplore
