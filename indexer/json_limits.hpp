// The sizes that everything read from outside is held to. A limit is there so that one wrong
// paste cannot fill the records; each is far above what a workshop writes.
#pragma once

#include <cstddef>

namespace shoplore {

// Bytes of one case as JSON; a longer text is refused with kTooLarge before it is parsed.
inline constexpr std::size_t kMaxCaseBytes = 256 * 1024;
// Bytes of complaint, of notes and of every other free text.
inline constexpr std::size_t kMaxTextBytes = 20'000;
// Bytes of an id, a name, a unit or a reference.
inline constexpr std::size_t kMaxNameBytes = 64;
// Entries of any one list.
inline constexpr std::size_t kMaxListEntries = 200;

}  // namespace shoplore
