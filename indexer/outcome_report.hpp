// Saying what became of a repair: stayed fixed, came back and why, or nobody knows.
//
// Writes the outcome of a closed case. A comeback that is here as a case of its own is named with
// `comeback`: that case then follows the earlier one. A `wrong_cause` revises the earlier case's
// cause, so that it counts under the right one from then on; its history keeps the old one.
//
// A comeback that is named takes two changes, first the newer case, then the earlier one.
// Everything is checked before either is written, and saying the same again changes nothing more:
// if the second change was not made (a crash, somebody else changing the case), say it again.
// Threads: those of Records.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "indexer/records.hpp"

namespace shoplore {

// The main cause as it turned out.
struct RightCause {
  std::string component, failure;
};

struct OutcomeReport {
  OutcomeStatus status = OutcomeStatus::kUnknown;
  std::optional<Date> as_of;              // default: the day the comeback was opened, else today
  std::optional<Kilometres> mileage_km;   // default: that of the comeback
  std::optional<ComebackReason> reason;   // only of kCameBack
  std::string comeback;                   // ref of the newer case; only of kCameBack
  std::optional<RightCause> right_cause;  // only of kWrongCause; default: that of the comeback
};

// The earlier case as it stands now. Fails with kNotFound for a case not on record (the place is
// its ref), kConflict when it is not at `expected` any more, kInvalidInput with every rule broken.
// Places are those of the report as JSON: /as_of, /mileage_km, /reason, /of (the comeback),
// /cause/component; the earlier ref when that case is not closed. Besides case_rules.hpp and
// case_links.hpp: no day after today; wrong_cause needs a right cause, given or of the comeback
// once that is closed, and one that is not already recorded.
[[nodiscard]] Result<Recorded> record_outcome(Records& records, std::string_view ref,
                                              std::optional<Revision> expected,
                                              const OutcomeReport& report, Date today, Role role,
                                              const std::optional<Receipt>& receipt = {});

}  // namespace shoplore
