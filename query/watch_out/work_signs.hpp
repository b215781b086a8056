// Signs of earlier work: what they led to on such vehicles, and which are worth looking for.
//
// Two forms. A sign the question states: of the cases with that sign on this engine family, else
// make, else on any vehicle (the narrowest with kEnoughToWarn), how many were which cause; the
// cause named is the one most of them had among those that stand out against all other cases of the
// records where anybody looked. A sign it does not state, nor denies: of the cases of a likely
// cause where anybody looked, how many had it; it has to stand out against all cases of other
// causes. Nobody having looked is not "no sign": only cases where somebody did are counted (the
// denominator of the second form). Signs of cleared codes are cleared_codes.hpp's when they are
// stated. Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

[[nodiscard]] Result<std::vector<Warning>> warn_of_work_signs(const WatchQuestion& question);

}  // namespace shoplore
