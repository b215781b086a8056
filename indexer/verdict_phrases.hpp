// Verdicts that take several words: "not the cause", "has had it", "hard to say".
//
// Single words are in note_words.hpp, limits and denied words in verdict_words.hpp. Pure functions,
// any thread.
#pragma once

#include <optional>

#include "indexer/verdict_words.hpp"

namespace shoplore {

// The longest that begins at this token; nothing when none does, or when one of its tokens is
// claimed. A denial before it turns it round ("does not meet spec").
[[nodiscard]] std::optional<VerdictWords> verdict_phrase_at(const NotePage& page, std::size_t at);

// "out of spec", "over the limit", "way out", "full of leaves"; "in order", "within limits": what
// begins at this token.
[[nodiscard]] std::optional<VerdictWords> verdict_of_limits(const NotePage& page, std::size_t at);

// "servo holds vacuum? no -> fail", "boost hoses tight: yes": the verdict when an answer stands at
// `behind`, after a question mark or a colon, and nothing goes on behind it; `said` is what the
// words before would say.
[[nodiscard]] std::optional<Verdict> answer_behind(const NotePage& page, std::size_t behind,
                                                   Verdict said);

}  // namespace shoplore
