// Whether a note tells that control units were scanned: "HV scan only: P0AA6". What came of a scan
// are the codes, so it is a check without a verdict beside it.
//
// "do a full scan", "needs a full scan" ask for one. Pure function, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Of a check's phrase; false of checks that are no scans and of single words.
[[nodiscard]] bool is_told_scan(const NotePage& page, const PhraseMatch& match);

}  // namespace shoplore
