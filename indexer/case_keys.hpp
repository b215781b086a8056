// The keys causes and fixes are counted by, made and taken apart once for everyone.
//
// A cause key is "component:failure", a fix key "action component", both with aliases followed, so
// that a key names the same thing whenever the case was recorded. Keys are for counting and for
// JSON; people read the display names.
// Pure functions, any thread; an id the vocabulary lacks is shown with spaces for underscores.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// "component:failure".
[[nodiscard]] std::string cause_key(const Cause& cause, const Vocabulary& vocabulary);

// "action component".
[[nodiscard]] std::string fix_key(const Fix& fix, const Vocabulary& vocabulary);

// Of each fix of the correction, sorted, each once.
[[nodiscard]] std::vector<std::string> fix_keys(const Case& record, const Vocabulary& vocabulary);

// A cause key taken apart; what is no key has an empty failure.
struct CauseParts {
  std::string component, failure;
};
[[nodiscard]] CauseParts cause_parts(std::string_view cause_key);

// A fix key taken apart; what is no key has an empty component.
[[nodiscard]] Fix fix_parts(std::string_view fix_key);

// "wastegate linkage, seized open".
[[nodiscard]] std::string display_cause(std::string_view component, std::string_view failure,
                                        const Vocabulary& vocabulary);
[[nodiscard]] std::string display_cause_key(std::string_view cause_key,
                                            const Vocabulary& vocabulary);

// "replace wastegate linkage" of the fix key "replace wastegate_linkage".
[[nodiscard]] std::string display_fix(std::string_view fix_key, const Vocabulary& vocabulary);

// Fixes done together, joined with " + "; "nothing written down" of none.
[[nodiscard]] std::string display_fixes(const std::vector<std::string>& fix_keys,
                                        const Vocabulary& vocabulary);

}  // namespace shoplore
