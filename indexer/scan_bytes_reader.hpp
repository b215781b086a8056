// Reads the replies of scan_bytes.hpp out of a note as fault codes with the status of their
// service.
//
// An item's span is the code's own bytes. The first code of a reply says how the reply was read.
// A reply 43 without codes is "no codes"; one of 47 or 4A is read past, since codes of other
// services may be there. Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it reads.
void read_scan_bytes(NotePage& page);

}  // namespace shoplore
