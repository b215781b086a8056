// A repair plan as JSON.
//
//   {"cause":{"component":"plug_well_seal","failure":"leaking","name":"plug-well seal, leaking"},
//    "vehicle":{"name":"2016 Cormont ...","make":"Cormont","engine_family":"CM14P"},
//    "case":"case-7","cases":98,"vehicles":95,
//    "proposed":{"fixes":["replace ignition_coil"],"because":"lasted_a_year","cases":49},
//    "fixes":[{"fixes":["replace ignition_coil"],"cases":49,"came_back":1,"still_fixed":40,
//      "not_heard_of":8,"seen_by_later_visits":2,"no_day":0,
//      "reasons":[{"reason":"part","cases":1}],
//      "stayed_fixed_days":[{"after":365,"share":0.97,"interval":Interval,"came_back":1,
//        "still_watched":20}],"stayed_fixed_km":[..]}],
//    "repeat_comebacks":{"vehicles":60,"comebacks":9,"more_than_once":1,"by_two_years":Estimate},
//    "beside":[{"fix":"replace ignition_coil","cases":98,
//      "beside":[{"fix":"replace plug_well_seal","cases":53}]}],
//    "missed_when_left_out":[{"fix":"replace ignition_coil","missed":"replace plug_well_seal",
//      "alone":Share,"together":Share}],
//    "parts":{"out_of":49,"parts":[{"name":"ignition coil","component":"ignition_coil","cases":49,
//      "usual_quantity":1}]},
//    "currency":{"name":"EUR","cases_in_others":0,"cases_without":0},
//    "work":[{"figure":"clocked_hours","work":"same_fixes","vehicles":"engine_family","cases":12,
//      "low":1.6,"median":2.2,"high":3.1}],
//    "removals":{"out_of":49,"minutes":38,"in_order":[{"id":"plug_cover","name":"plug cover",
//      "minutes":3,"cases":49,"now":"to_take_off"}],"also_found":[]},
//    "afterwards":{"common":[{"component":"battery","text":"register ..."}],"out_of":98,
//      "done":[{"fix":"relearn throttle_body","cases":3}]},
//    "cautions":[Caution],"traps":[{"text":"..","cases":9,"refs":["case-3"]}],
//    "proof":[{"id":"road_test","name":"road test","minutes":20,"how":"..","caught":Share}],
//    "revision":2412,"cases_in_records":2400,"note":".."}
//
// Share = share_form.hpp, Estimate = estimate_form.hpp or null, Interval its interval, Caution =
// list_form.hpp. "case" is null without one, "proposed" where no fix was ever written down, a
// reason nobody wrote down, minutes nobody knows and the component of a part the vocabulary lacks.
// Where too few cases wrote a figure down, "low", "median" and "high" are null and "values" has
// what there is. What a component commonly needs afterwards is common practice, no source. One
// line, no trailing newline. Pure function, any thread.
#pragma once

#include <string>

#include "query/repair_plan/repair_plan.hpp"

namespace shoplore {

[[nodiscard]] std::string repair_plan_json(const RepairPlan& plan, const Vocabulary& vocabulary);

}  // namespace shoplore
