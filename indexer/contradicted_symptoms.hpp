// Symptoms that a note names and takes back, or only asks after.
//
// "compressor howls while charging, never howls on the road": there at times is there. What is only
// asked after gives way to its answer ("Is there drag? The brakes do not drag.") and to nobody
// knowing ("Is coolant being lost? can't say"). An answer right behind is denials.hpp's.
// Pure function, any thread.
#pragma once

#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

// Takes such symptoms out of the items. Requires: the items' spans are of the page.
void drop_contradicted(const NotePage& page, std::vector<RecognisedItem>& items);

}  // namespace shoplore
