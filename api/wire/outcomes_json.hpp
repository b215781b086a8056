// What became of repairs as JSON: what is due, what a case may be a comeback of, what is reported.
//
//   due:      {"due":[{"ref":"case-7","job_number":"4711","vehicle":"2016 Brackwater Tidal BW16D,
//              142,000 km","component":"..","failure":"..","name":"wastegate linkage, seized open",
//              "fixes":["replace wastegate_linkage"],"fixes_name":"replace wastegate linkage",
//              "done":"2026-03-04","days_since":96,"asked":"2026-05-20"}],
//              "all":312,"due_after_days":60}        "asked" only where somebody asked before
//   comeback: {"ref":"case-9","offers":[Offer],"window_days":730}
//   Offer =   {"ref":"case-7","done":"2026-03-04","days_since":96,"km_since":4100,
//              "component":"..","failure":"..","name":"..","fixes":[..],"fixes_name":"..",
//              "shared":{"symptoms":["lack_of_power"],"codes":["P0299"]},
//              "possible_reasons":["same_cause","part"]}   "km_since" only where both are known
//   report:   {"status":"came_back","as_of":"2026-03-02","mileage_km":146100,
//              "reason":"wrong_cause","of":"case-9",
//              "cause":{"component":"..","failure":".."}}  all but status may be left out
//
// Reading is strict: unknown fields are refused by name, places are JSON Pointers; kInvalidInput
// or kTooLarge. Pure functions, any thread. One line, no trailing newline.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/outcome_report.hpp"
#include "query/outcomes/comeback_offer.hpp"
#include "query/outcomes/outcomes_due.hpp"

namespace shoplore {

[[nodiscard]] std::string outcomes_due_json(const OutcomesDue& due, const Vocabulary& vocabulary);

[[nodiscard]] std::string comeback_json(std::string_view ref,
                                        const std::vector<ComebackOffer>& offers,
                                        const Vocabulary& vocabulary);

[[nodiscard]] Result<OutcomeReport> outcome_report_from_json(std::string_view text);

}  // namespace shoplore
