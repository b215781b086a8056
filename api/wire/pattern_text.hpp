// A pattern in words, the same in every way of showing it.
//
//   conditions: "engine family BW16D, P0299, uphill"
//   outcome:    "wastegate linkage, seized open", "found: codes cleared recently"
//   sentence:   "engine family BW16D, P0299, uphill: wastegate linkage, seized open in 50 of 56
//               cases, otherwise in 5 of 130"
// Pure functions, any thread.
#pragma once

#include <string>

#include "indexer/vocabulary.hpp"
#include "query/patterns/pattern.hpp"

namespace shoplore {

// Scope and items; of kPassed the cause, since there it is what is given.
[[nodiscard]] std::string pattern_conditions(const Pattern& pattern, const Vocabulary& vocabulary);

// Items alone, for where the scope is the heading; "any complaint" when there are none.
[[nodiscard]] std::string conditions_within_scope(const Pattern& pattern,
                                                  const Vocabulary& vocabulary);

// What then was so in share.count cases.
[[nodiscard]] std::string pattern_outcome(const Pattern& pattern, const Vocabulary& vocabulary);

// Both with the counts, and those of the rest where there is one. One sentence, no full stop.
[[nodiscard]] std::string pattern_sentence(const Pattern& pattern, const Vocabulary& vocabulary);

// "all vehicles", "make Brackwater", "engine family BW16D".
[[nodiscard]] std::string scope_text(const PatternScope& scope);

// "What it turned out to be": above the patterns of a kind.
[[nodiscard]] std::string_view heading_of(PatternKind kind);

}  // namespace shoplore
