// Reads earlier repairs out of a note: a component and, near it, a word of work done.
//
// "turbo already replaced elsewhere", "new coil", "we put a crank sensor in it", "pads done 20k
// ago", "battery 3 months old". Which words are work is repair_deeds.hpp's; who and when
// repair_said.hpp's. Work that is only wanted ("needs a new turbo") or denied ("not replaced"), and
// parts that changed places for a test ("swapped coils 1 and 3"), are none and stay unread
// (repair_undone.hpp). Elsewhere when the note does not say by whom, and then reading_chosen says
// so. The same work said twice of a part is one repair. A component inside a condition ("since new
// tyres") is a repair too, and leaves the words to the condition. Pure functions, any thread.
#pragma once

#include "indexer/bare_parts.hpp"
#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it read. A component that takes part in a longer symptom ("battery light") is none.
void read_earlier_repairs(NotePage& page, const Vocabulary& vocabulary,
                          const BareParts& bare_parts);

}  // namespace shoplore
