// Reads checks out of a note, with how they went: by a word ("linkage stiff by hand") or by a
// reading ("battery at rest 11.9 V") held against the range the vocabulary expects.
//
// A check with neither is none: the note may only plan it. A word outranks the reading. A reading
// without a check stays an item of its own; one that a check took is both.
// Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it read. Requires: readings are on the page already (reading_reader.hpp).
void read_checks(NotePage& page, const Vocabulary& vocabulary);

// What a reading says of a check: pass inside the expected range (ends included), fail outside or
// when a circuit that should conduct reads OL; nothing when range or unit do not tell.
[[nodiscard]] std::optional<Verdict> verdict_of(const Entry& check, const Reading& reading,
                                                std::string_view unit);

}  // namespace shoplore
