// What may stand between the words of a phrase without being one of them.
//
// People put words of no weight, verdicts and denials inside what the vocabulary writes in one
// piece; phrase_matcher.hpp asks here whether a phrase goes on behind them. Knows no phrases.
// Pure functions, any thread.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/phrase_matcher.hpp"

namespace shoplore {

// Whether a word may stand between two words of a phrase of that kind: "linkage [is] stiff [by]
// hand". Never one that joins two things: "turbo and actuator" is no turbo actuator.
[[nodiscard]] bool may_stand_between(EntryKind kind, std::string_view word);

// "abs [and esp lamps]", "airbag + abs lights": names joined before the one lamp that all share.
// `claimed` by token: what another reader has taken.
[[nodiscard]] bool shares_lamp(const std::vector<Token>& tokens, const std::vector<char>& claimed,
                               std::size_t at);

// "the pedal is not soft", "the alarm has never gone off", "the lamp no longer flashes", "the belt
// has stopped squealing": whether the word at `at` denies a symptom from within.
[[nodiscard]] bool denies_within(EntryKind kind, const std::vector<Token>& tokens, std::size_t at);

// "clicks, no crank": whether word k of a symptom's phrase, a denial, stands at `next` behind
// nothing but a comma, which then parts nothing. `clause`: that of the words before.
[[nodiscard]] bool goes_on_past_comma(const PhraseMatcher::Phrase& phrase, std::size_t k,
                                      const std::vector<Token>& tokens, std::size_t next,
                                      std::size_t clause);

// How many of the words tell a thing or what it does wherever they stand; the others need their
// place in the phrase.
[[nodiscard]] std::size_t heavy_words(const std::vector<std::string>& stems);

}  // namespace shoplore
