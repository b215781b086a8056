// What is seen more or less often lately, as JSON.
//
//   {"months":{"first":"2020-11","last":"2026-10"},"cases":1812,
//    "cases_lately":[{"months":3,"cases":71},{"months":6,"cases":150},{"months":12,"cases":305}],
//    "enough_to_compare":true,"tested":104,"shown_at":0.01,"rows":[Row],"pairings":[Pairing]}
//
// Row = {"component":"wastegate_linkage","failure":"seized_open","engine_family":"bw16d" or null,
//   "change":"risen","season":"allowed_for",
//   "windows":[{"months":3,"cases":22,"before":140,"expected":8.8,
//     "a_month":{"cases":7.3,"low":5.0,"high":10.4,"confidence":0.9},
//     "ratio":{"value":2.5,"low":1.7,"high":3.6,"confidence":0.9},"p":0.0001,"q":0.004}],
//   "sum_above":{"sum":14.5,"signals_at":9.25,"began":"2026-07"} or null,
//   "same_three_months":[{"year":2025,"cases":7}],
//   "by_month":[3,2,...],"usual_by_month":[2.9,2.8,...]}   the last month at the end
// Pairing = {"component":"glow_module","failure":"dead","engine_family":"dn22d","cases":5,
//   "first":"2026-03","of_the_failure_before":31,"of_the_family_before":54}
//
// Months are calendar months, "2026-10". "a_month" is the cases of the window a month; "q" is null
// where there are too few cases to stand out, a number without end is null too.
// One line, no trailing newline. Pure functions, any thread.
#pragma once

#include <string>

#include "query/lately/lately.hpp"

namespace shoplore {

[[nodiscard]] std::string lately_json(const Lately& lately);

}  // namespace shoplore
