// Reads fault codes out of a note, with what stands beside them: status, control unit, failure
// type, whether they came back; and that there were none (no_codes_reader.hpp).
//
// How codes are spelt is code_spelling.hpp's, status words are code_words.hpp's, control units
// module_names.hpp's. Whole scan reports and raw bytes are read before (scan_report.hpp,
// scan_bytes.hpp).
// - A status before a code holds for the whole list after it ("pending: P0299, P0234"), one after
//   it for that code, and for the list before it when that is joined by "/", "&" or "and".
// - A control unit before a code holds for its list.
// - "after clearing", "cleared, came back" is seen after clearing, "after the fix" after the fix.
// - A code denied ("no P0299", "P0299 not stored") is none and stays unread. "Not active" is
//   history.
// An item's code is empty when nothing was said beside the code.
// Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it reads, "no codes" included.
void read_codes(NotePage& page);

}  // namespace shoplore
