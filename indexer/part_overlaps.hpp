// Symptoms whose words are only a piece of a part's longer name: "knock sensor", "play in the
// wheel bearing".
//
// Does not find either (phrase_matcher.hpp). Pure functions, any thread. Requires of every
// function: parts are the components that the note's phrases name.
#pragma once

#include <vector>

#include "indexer/phrase_matcher.hpp"

namespace shoplore {

// "knock sensor ok", "fan control module ok": the symptom's words are a piece of a longer name.
// The end of one is enough for what is there ("engine oil on the floor"), and for the wellness of
// a part of which the symptom tells.
[[nodiscard]] bool cuts_a_part(const PhraseMatch& match, const std::vector<PhraseMatch>& parts,
                               const Vocabulary& vocabulary);

// "look for play in the wheel bearing": the last word begins a part's name.
[[nodiscard]] bool ends_in_a_part(const PhraseMatch& match, const std::vector<PhraseMatch>& parts);

}  // namespace shoplore
