// Reads that a scan found no fault codes: "no codes", "no stored DTCs", "codes: none", "0 codes",
// "nothing stored".
//
// Not taken: "no faults found", which may be the workshop's own finding; "no permanent codes" and
// "no other codes", which leave room for codes. Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// The id of an item of kind scanned.
inline constexpr std::string_view kNoCodes = "no_codes";

// Claims what it reads.
void read_no_codes(NotePage& page);

}  // namespace shoplore
