// Words of a finding's phrase that mean something else where they stand: "no power steering",
// "heater hot", "DO NOT CRANK".
//
// Knows a few words of many senses, and the words around them that decide. Does not find phrases
// (phrase_matcher.hpp). Pure functions, any thread. Requires: matches are of the page.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// "no power steering", "flat tyre": the phrase ends in power or flat and the next word takes it;
// "battery not flat": a bare "flat" said of something before it. Also an order: "DO NOT CRANK".
[[nodiscard]] bool is_another_thing(const NotePage& page, const PhraseMatch& match);

// "takes ages to warm up", "heater hot", "last summer": a bare word of heat is a condition only
// after a finding or at the beginning of a clause, a season only where it is no time past. False of
// what is no condition.
[[nodiscard]] bool is_other_condition(const NotePage& page, const PhraseMatch& match);

// "wheel gets really hot", "stone cold": how a thing is, not when it happens.
[[nodiscard]] bool is_warmth_of_a_thing(const NotePage& page, std::size_t at);

}  // namespace shoplore
