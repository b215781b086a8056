// Conditions told by a speed: "at 110 km/h", "over 60 mph", "below 5 mph".
//
// A speed of 85 km/h and more is a higher one, one of 15 km/h and less a walking pace; between the
// two a speed tells no condition, nor does a bound that leaves both open ("below 110 km/h"). A
// speed without a unit is left to the vocabulary's phrases ("at 110"): no other number may be
// meant. Does not look at what the speed is said of (finding_reader.hpp). Pure functions, any
// thread.
#pragma once

#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

// Matches of conditions over tokens that are not claimed, in text order. Empty in a shop without
// those conditions.
[[nodiscard]] std::vector<PhraseMatch> speed_conditions(const NotePage& page,
                                                        const Vocabulary& vocabulary);

}  // namespace shoplore
