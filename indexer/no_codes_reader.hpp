// Reads that a scan found no fault codes: "no codes", "no stored DTCs", "codes: none", "0 codes",
// "nothing stored", "scan clean", "fault memory empty", with the control unit beside it.
//
// Where the text has a code as well ("ECM: P0299, ABS: no codes") the words are read past.
// Not taken: "no faults found", which may be the workshop's own finding; "no permanent codes" and
// "no other codes", which leave room for codes. Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// The id of an item of kind scanned.
inline constexpr std::string_view kNoCodes = "no_codes";

// Claims what it reads. Requires: the codes of the page were read.
void read_no_codes(NotePage& page);

}  // namespace shoplore
