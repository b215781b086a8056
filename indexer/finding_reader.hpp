// Reads findings out of a note: symptoms, conditions and work signs, present or absent, and how
// often.
//
// What a negation reaches is told in denials.hpp.
// A condition denied ("not uphill") is none and stays unread. A cylinder number is read with its
// symptom and dropped. Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it read.
void read_findings(NotePage& page, const Vocabulary& vocabulary);

}  // namespace shoplore
