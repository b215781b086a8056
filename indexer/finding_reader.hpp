// Reads findings out of a note: symptoms, conditions and work signs, present or absent, and how
// often.
//
// A negation reaches over the findings after it in its clause, up to "and" or "but": "no misfire
// or whistle" denies both. It reaches over at most one word that nobody knows ("no audible
// whistle"), over more only past an "or". A phrase of the vocabulary that holds a negation ("no
// start") is a finding and denies nothing. "not always" says how often.
// A condition denied ("not uphill") is none and stays unread. A cylinder number is read with its
// symptom and dropped. Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it read.
void read_findings(NotePage& page);

// Whether the token is denied by the word directly before it, stop words apart.
[[nodiscard]] bool is_denied_at(const NotePage& page, std::size_t at);

}  // namespace shoplore
