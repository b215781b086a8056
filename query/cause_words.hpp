// The cause somebody names when they ask about one: by its key, or in plain words.
//
// "wastegate_linkage:seized_open" is taken as it stands, aliases followed. Plain words ("wastegate
// linkage seized open", "worn turbo") are split into a component and a failure in every way and
// either order, each looked up as people look up words (vocabulary_search.hpp); a component alone
// ("wastegate linkage") or a failure alone means the causes of it that these records hold.
// A misspelt half of fewer than five letters names nothing.
// Words that are the name or a phrase of a component or failure are that alone; a cause never seen
// here must be named in full.
// It knows which causes the records hold, because words that fit several mean the one that was
// seen here; it does not read notes (recogniser.hpp) and counts nothing for an answer.
//
// Which reading is taken, best first: the component found by a better match (MatchedBy); then a
// cause seen here before one never seen; then the failure found by a better match. Readings that
// are alike in all three are ambiguous: nothing is guessed.
// Threads, further errors: the counter's.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

struct NamedCause {
  std::string key;  // "component:failure", canonical
  std::string component, failure;
  std::uint32_t cases = 0;  // counted cases of it; 0: never seen here
};

// More words than this name no cause.
inline constexpr std::size_t kMostCauseWords = 12;
// Candidates named when the words are ambiguous.
inline constexpr std::size_t kMostCandidates = 8;

// kInvalidInput, naming `place`: when a key's component or failure is unknown (with the ids that
// may have been meant), when the words fit no cause (with causes seen here that share a word), or
// when they fit several (each a problem: its key and its name, most cases first).
[[nodiscard]] Result<NamedCause> cause_from_words(std::string_view words, std::string_view place,
                                                  const Vocabulary& vocabulary,
                                                  const CaseCounter& counter);

}  // namespace shoplore
