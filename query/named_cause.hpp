// The cause somebody means, by its key or by its words.
//
// "wastegate_linkage:seized_open", "wastegate linkage, seized open", "worn turbo" and, when it has
// one cause in the records only, "charge air hose" alike. A part or a failure alone stands for the
// causes of it that the records hold; of words that fit several ways the best fit counts, and what
// the records hold before what only the vocabulary has.
// It reads names, not notes: whoever describes what the vehicle does wants ask.
//
// Pure function, any thread. A few milliseconds a word, up to kMostCauseWords words.
// Errors, all kInvalidInput, the place being the text as given:
// - words that name no part or failure, or an id that the vocabulary lacks: near ones are named
// - several causes fit: each is a problem whose place is its key
#pragma once

#include <set>
#include <string>
#include <string_view>

#include "indexer/result.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

inline constexpr std::size_t kMostCauseWords = 12;

// The cause key ("component:failure", canonical ids). It may be one that `seen`, the cause keys of
// the records, does not hold: then it was named outright.
[[nodiscard]] Result<std::string> named_cause(std::string_view text, const Vocabulary& vocabulary,
                                              const std::set<std::string>& seen);

}  // namespace shoplore
