// Names people read for the keys under which causes and fixes are counted (evidence_item.hpp).
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

// The same of the cause key "wastegate_linkage:seized_open".
[[nodiscard]] std::string display_cause(std::string_view cause_key, const Vocabulary& vocabulary);

// "replace wastegate linkage" of the fix key "replace wastegate_linkage".
[[nodiscard]] std::string display_fix(std::string_view fix_key, const Vocabulary& vocabulary);

// Fixes done together, joined with " + ".
[[nodiscard]] std::string display_fixes(const std::vector<std::string>& fix_keys,
                                        const Vocabulary& vocabulary);

}  // namespace shoplore
