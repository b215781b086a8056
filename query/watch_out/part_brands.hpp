// Brands whose parts came back more often than other brands' here. For the workshop alone: never in
// what a customer is asked to approve.
//
// Only the shop's own cases, by the brand written down with a part, for the components that the
// fixes of the likely causes replace. Known outcomes are counted that say something of the part: it
// stayed fixed, or came back for the part or the same cause, or with no reason given; comebacks by
// a wrong cause, by workmanship or by something unrelated are left out. Both the brand and all
// other brands together need kEnoughOutcomes, and the difference has to be credible: the lower end
// of the brand's 90 % interval above the upper end of the others'. One brand used on the harder
// jobs can still look worse than it is, and the wording leaves the judgement to people. Threads and
// errors: the counter's.
#pragma once

#include <vector>

#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

// Known outcomes a brand, and the others together, must have.
inline constexpr std::uint32_t kEnoughOutcomes = 10;

[[nodiscard]] Result<std::vector<Warning>> warn_of_part_brands(const WatchQuestion& question);

}  // namespace shoplore
