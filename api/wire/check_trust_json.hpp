// Trust in checks as JSON.
//
//   {"checks":[{"check":"plug_well_look","done":141,"unclear":8,"mixed":0,
//     "pass":Verdict,"fail":Verdict,"tells_about_components":true,
//     "fail_against_cause":{"true_positive":40,"false_positive":4,"false_negative":21,
//       "true_negative":68,"sensitivity":Share,"specificity":Share,"positive_predictive_value":
//       Share,"negative_predictive_value":Share,"positive_likelihood_ratio":Ratio,
//       "negative_likelihood_ratio":Ratio,"diagnostic_odds_ratio":Ratio},
//     "by_cause":[{"component":"plug_well_seal","failure":"leaking","told_about":true,"pass":21,
//       "fail":40,"misled":21,"against":Share}],
//     "by_condition":[{"condition":"key_on","pass":Verdict,"fail":Verdict,"unclear":0}]}]}
//
// Verdict = {"given":89,"borne_out":68,"right":0,"misled":21,"unknown":0,"misled_us":Share};
//   given is the sum of the four after it.
// Share = share_form.hpp. Ratio = ratio_form.hpp, null where cases with or without the cause are
//   lacking.
// "fail_against_cause" is null and "against" of no meaning where the check tells about no
// component. "by_condition" counts verdicts, everything else cases; condition "" is none written.
// One line, no trailing newline. Pure function, any thread.
#pragma once

#include <string>
#include <vector>

#include "query/checks/trust_by_condition.hpp"

namespace shoplore {

[[nodiscard]] std::string check_trust_json(const std::vector<CheckTrust>& checks,
                                           const std::vector<ConditionTrust>& conditions);

}  // namespace shoplore
