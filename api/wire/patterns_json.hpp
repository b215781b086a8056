// Recurring patterns as JSON.
//
//   {"cases":2421,"enough":true,"scope":Scope,"scope_cases":190,"fewest_cases":5,"most_chance":0.05,
//    "found":1204,"matches":212,
//    "tested":[{"kind":"cause","tested":1519709,"found":71438}],
//    "patterns":[{"kind":"cause","scope":Scope,"items":[{"attribute":"code:P0299","value":
//      "present","name":"P0299"}],"cause":Cause,"work_sign":Sign,"share":Share,"vehicles":48,
//      "rest":{"count":5,"out_of":130},"support":0.27,"lift":3.1,"odds_ratio":Ratio,
//      "p":1e-30,"q":1e-27,"holm":1e-25,"sentence":"...","cases":["case-7"]}],
//    "next_cursor":""}
//
// Scope = {"attribute":"engine_family","value":"bw16d","name":"engine family BW16D"}; attribute and
//   value are "" for all vehicles. Cause = {"component","failure","name"} or null; Sign = {"id",
//   "name"} or null. Share = share_form.hpp. Ratio = ratio_form.hpp.
// "found" are those chosen from, "matches" those left of them that say more than a shorter one;
// "patterns" a part of these. "rest", "support", "lift" and "odds_ratio" are null where a share is
// held against a limit instead of a rest (limit_tests.hpp). "cases" are those of share.count.
// "enough" is false, and nothing is mined, below 100 cases.
// One line, no trailing newline. Pure function, any thread.
#pragma once

#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/patterns/pattern_book.hpp"

namespace shoplore {

[[nodiscard]] std::string patterns_json(const PatternBook& book, const PatternList& list,
                                        const std::vector<OpenedPattern>& shown,
                                        std::string_view next_cursor, const Vocabulary& vocabulary);

}  // namespace shoplore
