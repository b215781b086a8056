// This very vehicle, seen here before: its visits in order, and whether this may be a comeback.
//
// By its token only, so nothing about the vehicle has to be written down to ask. A comeback is
// pointed out when an earlier repair was done at most kComebackWindow before and the vehicle then
// had a symptom or a code of this question, or what was found then is a cause likely now. That it
// may be one is all that is said: the same words can have another cause; a case that already
// follows another says it by itself. An odometer that stood higher before is told
// first. The case asked about is no visit of its own past, nor is anything recorded after it was
// opened. Reads the records, not the index: as many bodies as the vehicle has visits. Threads and
// errors: the store's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/store.hpp"
#include "query/lives/vehicle_histories.hpp"
#include "query/outcomes/comeback_offer.hpp"
#include "query/watch_out/warning.hpp"
#include "query/watch_out/watch_question.hpp"

namespace shoplore {

// The vehicle as asked about.
struct VehicleNow {
  std::string token;  // not empty
  std::string ref;    // of the case asked about; empty: none yet
  // Of the question, or the case's opening; without it nothing is said of comebacks.
  std::optional<Date> day;
  std::string follows = {};  // the case it is a comeback of, once somebody said so
  std::optional<Kilometres> km = {};
};

// Nothing when it was never here before.
[[nodiscard]] Result<std::optional<Warning>> warn_of_visits_before(const VehicleNow& vehicle,
                                                                   const WatchQuestion& question,
                                                                   const Store& store);

}  // namespace shoplore
