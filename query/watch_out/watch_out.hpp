// Watch out: what the shop's own cases say to beware of with this complaint on this vehicle.
//
// A file for each kind in this folder; warning.hpp names them, stands_out.hpp says when a
// count is enough to warn. All is counted on bitmaps; no body of a case is read but of this very
// vehicle's visits. Nothing is said where nothing is ranked, except of this very vehicle and of
// codes that were cleared. Ordered by what ignoring each would cost, minutes at stake x how often
// (at_stake.hpp), the dearest first.
//
// We see only vehicles that came to us: an earlier repair that cured never arrives, and only our
// own repairs have cure rates. Warnings are for the workshop, not for the customer's approval.
// Threads: any. Errors: the counter's and the store's.
#pragma once

#include <optional>
#include <vector>

#include "query/watch_out/seen_before.hpp"
#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

// Every kind that is counted, all but seen_before; ordered.
[[nodiscard]] Result<std::vector<Warning>> counted_warnings(const WatchQuestion& question);

// All kinds, ordered, with the refs of the cases behind them. A vehicle that is not known: nothing
// is said of its past.
[[nodiscard]] Result<std::vector<Warning>> watch_out(const WatchQuestion& question,
                                                     const std::optional<VehicleNow>& vehicle,
                                                     const Store& store);

}  // namespace shoplore
