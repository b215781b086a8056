// Repairs that vehicles arriving with this complaint had already had, and that had not cured them.
//
// Two forms. A repair the question states: what the vehicles that came in like this with it already
// done turned out to have. One it does not state: before ordering it, of those that came in like
// this how many had it already done in vain, that is, with the cause on another component.
// We see only vehicles that came to us: those an earlier repair cured never arrive, and the wording
// says so. Who did the repair is not counted.
//
// Like this means the symptoms and codes of the question, on its engine family or make; where fewer
// than kLikeThis of those were asked about earlier repairs, the commonest finding is left out again
// and again, down to the rarest one alone. A repair is warned of when its share in vain stands out
// (stands_out.hpp) against all cases outside the complaint, on these vehicles or else on any. A
// stated one that is too rare among those like this is counted over every complaint; then the cause
// named has to stand out against all cases without it.
// Threads and errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

// Cases asked about earlier repairs that a complaint should have before anything is left out of it.
inline constexpr std::uint32_t kLikeThis = 20;

[[nodiscard]] Result<std::vector<Warning>> warn_of_earlier_repairs(const WatchQuestion& question);

}  // namespace shoplore
