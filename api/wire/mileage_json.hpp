// Failure mileage as JSON.
//
//   {"component":"wastegate_linkage","failure":"seized_open","make":"","engine_family":"",
//    "cases":{"count":193,"beside_main":0,"mileage_known":166,"quartiles_km":{"least":5100,
//      "quarter":110000,"half":143000,"three_quarters":187000,"greatest":329000}},
//    "engine_families":["bw16d"],
//    "vehicles":{"in_scope":1700,"without_part":900,"family_unknown":100,"no_km":20,"backwards":0,
//      "failed_at_first":93,"no_distance":300,"followed":287},
//    "from_first_visit":Life,"replaced_here":99,"since_replaced":Life}
//
// Life = {"lives":287,"failures":41,"km_at_risk":9000000,"longest_km":290000,"starts_km":61000,
//   "curve":[{"km":70000,"at_risk":55,"failed":1,"survival":0.98,"standard_error":0.02,
//     "low":0.93,"high":0.99}],
//   "weibull":{"shape":Estimate,"scale_km":Estimate,"b10_km":Age,"b50_km":Age,
//     "log_likelihood":-501.2,"hazard":"rising"},
//   "lognormal":{"log_mean":11.9,"log_deviation":Estimate,"b10_km":Age,"b50_km":Age,
//     "log_likelihood":-503.0},
//   "better":"weibull","lead":1.8,"not_fitted":""}
// Estimate = {"value":98000,"low":91000,"high":106000,"confidence":0.9}. Age = an Estimate
//   and "told": yes, too_few, before_seen, beyond_seen: only of yes is it a figure to go by.
// "quartiles_km" is null without a case that says its km, "since_replaced" below five lives,
// "weibull", "lognormal", "better" and "lead" where nothing was fitted; "low" and "high" of the
// curve where the interval is not known. "hazard": rising, falling, undecided. Make and engine
// family are those asked for. What each count means: failure_lives.hpp.
// One line, no trailing newline. Pure function, any thread.
#pragma once

#include <string>

#include "query/failure_mileage/failure_mileage.hpp"

namespace shoplore {

[[nodiscard]] std::string mileage_json(const FailureMileage& answer);

}  // namespace shoplore
