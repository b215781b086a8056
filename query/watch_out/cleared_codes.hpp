// Codes recently cleared, or none although a warning lamp is on: no codes now proves nothing.
//
// Said when the question states that codes were cleared or the battery was disconnected lately
// (signs of earlier work; a scan tool whose readiness is not set means the first), or when a scan
// found no code although a lamp that a control unit lights is on. It is a statement about what a
// scan can tell, so it needs no count; beside it stands how many cases of that kind had codes
// later, once kEnoughToWarn are known; where none had, nothing, since a second scan is seldom
// written down. Cases of that kind: scanned, with that sign or one of the
// lamps of the question, and no code at arrival. Lamps are those a control unit lights together
// with a code, not those of a level or a pressure. Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

[[nodiscard]] Result<std::vector<Warning>> warn_of_cleared_codes(const WatchQuestion& question);

}  // namespace shoplore
