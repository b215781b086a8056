// How long each repair lasted, as far as anybody knows: one life a closed case with fixes.
//
// A life starts on the day the work was done. It ended when the outcome says came back, or when a
// later case follows it; a comeback whose reason is `unrelated` ends nothing. Else it was seen
// lasting until the latest of: the day of a recorded `stayed_fixed` or of an unrelated comeback,
// and later visits of the same vehicle whose complaint, if any, is another (same_complaint.hpp).
// Such visits are not written anywhere as outcomes: they count here without that. The watching
// stops at a later case of the same complaint that nobody linked, and at one of which too little
// was written down to tell, unless an outcome recorded on or after that day says it stayed fixed.
//
// Repairs nobody heard of afterwards have no life at all: they are listed, to be counted, and
// belong in no curve. A case counts under its recorded main cause: once a `wrong_cause` is
// revised, under the right one. It divides nothing: stayed_fixed.hpp does.
//
// Plain values and a pure function, any thread; it cannot fail.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "indexer/case_record.hpp"
#include "query/lives/vehicle_histories.hpp"

namespace shoplore {

enum class FixEnd {
  kCameBack,
  kStillFixed,  // when last heard of
  kNotHeardOf,
};
template <>
inline constexpr EnumTable<FixEnd, 3> kEnumNames<FixEnd>{{{FixEnd::kCameBack, "came_back"},
                                                          {FixEnd::kStillFixed, "still_fixed"},
                                                          {FixEnd::kNotHeardOf, "not_heard_of"}}};

// What the end of a life is known from.
enum class HeardFrom { kNothing, kRecordedOutcome, kLaterVisit };
template <>
inline constexpr EnumTable<HeardFrom, 3> kEnumNames<HeardFrom>{
    {{HeardFrom::kNothing, "nothing"},
     {HeardFrom::kRecordedOutcome, "recorded_outcome"},
     {HeardFrom::kLaterVisit, "later_visit"}}};

struct FixLife {
  CaseId id;
  std::string ref;
  std::string vehicle;              // its token; empty: not known to be the same as any other
  std::string make, engine_family;  // of the vehicle, in lower case; may be empty
  std::string cause;                // cause key
  std::vector<std::string> fixes;   // fix keys done together, sorted; never empty
  Date done;                        // when the life began
  FixEnd end = FixEnd::kNotHeardOf;
  HeardFrom heard_from = HeardFrom::kNothing;
  std::optional<ComebackReason> reason;  // only of kCameBack, where it was written down
  std::optional<Date> asked;  // only of kNotHeardOf: when somebody asked and could not tell
  // How long it lasted or was seen lasting, at least 0. Empty when not heard of, and where nobody
  // wrote down a day.
  std::optional<std::chrono::days> days;
  // Likewise on the road; empty also where either odometer reading is missing or they go backwards.
  std::optional<Kilometres> km;
};

// By vehicle and visit, in the order of the histories.
[[nodiscard]] std::vector<FixLife> fix_lives(const std::vector<VehicleHistory>& histories);

}  // namespace shoplore
