// Reads earlier repairs out of a note: a component and, near it, a word of work done.
//
// "turbo already replaced elsewhere", "new coil", "coil and plugs changed here last month". Work
// that is only wanted ("needs a new turbo") or denied ("not replaced") is none, and stays unread.
// Who did it comes from the words around; elsewhere when they do not say, and then
// reading_chosen says so. When it was done is read and dropped.
// Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it read. A component that takes part in a longer symptom ("battery light") is none.
void read_earlier_repairs(NotePage& page, const Vocabulary& vocabulary);

}  // namespace shoplore
