// Whether a repair that a note names was done at all: not wanted, denied, asked for or a test.
//
// "needs new turbo", "turbo not replaced", "new pads advised", "turbo replaced?", "swapped coils 1
// and 2". Does not know which part was meant (repair_reader.hpp).
// Pure functions, any thread.
#pragma once

#include <vector>

#include "indexer/note_page.hpp"
#include "indexer/repair_said.hpp"

namespace shoplore {

// Whether the words before this token say that the work is wanted, planned or denied.
[[nodiscard]] bool is_undone_before(const NotePage& page, std::size_t at);

// Whether the words after the part and its work say so: "new pads needed", "turbo replaced?".
// is_work marks the words of work by token.
[[nodiscard]] bool is_undone_after(const NotePage& page, const std::vector<char>& is_work,
                                   TokenRange group);

// "swapped coil with no 2", "pump relay swapped": parts that changed places to see what follows.
// around: the group with the words of time and person around it.
[[nodiscard]] bool is_test_swap(const NotePage& page, TokenRange work, TokenRange group,
                                TokenRange around, const RepairSaid& said);

// "put a coil in it", "battery he put in"; not "put the battery on charge", "put it back".
[[nodiscard]] bool is_put_in(const NotePage& page, std::size_t put, TokenRange part);

}  // namespace shoplore
