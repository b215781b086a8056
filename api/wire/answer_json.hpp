// The answer object and the search page as JSON: what `--json`, HTTP and the page all get.
//
// Every key below is always there, empty lists and false included, except "verdict", "by",
// "mileage_km" and "note" of an item and "dropped" of a width, which only some have. Numbers are
// full doubles; "name" is what people read, beside the ids. Share = {"count":14,"out_of":19,
// "interval":{"low":0.55,"high":0.87,"confidence":0.9}}. Item = {"attribute":"symptom:whistle",
// "value":"absent","name":"no whistle"}. Byte ranges are half-open and count UTF-8 bytes.
//
//   {"understood":{"text":"P0299 flat, no whistle",
//      "items":[{"kind":"symptom","id":"whistle","name":"whistle","state":"absent",
//                "begin":12,"end":22}],
//      "not_understood":["foo"],
//      "suggestions":[{"word":"foo","suggestions":[{"kind":"symptom","id":"..","name":".."}]}],
//      "evidence":[Item]},
//    "likely_causes":[{"component":"wastegate_linkage","failure":"seized_open",
//      "name":"wastegate linkage, seized open","share":Share,"vehicles":13,"seen":41,
//      "probability":0.81,
//      "why":[{"attribute":..,"value":..,"name":..,"weight":1.7,"with_item":17,"known":19,
//              "with_item_elsewhere":60,"known_elsewhere":1200}],
//      "fixes":[{"fixes":["replace wastegate_linkage"],"name":"replace wastegate linkage",
//                "cases":9,"stayed_fixed":7,"came_back":1,"unknown":1,"stayed":Share}],
//      "fixes_together":[as fixes]}],
//    "not_in_these_records":0.02,"causes_left_out":3,"left_out_probability":0.04,
//    "breadth":[{"scope":"make
//    brackwater","items":[Item],"dropped":Item,"cases":19,"vehicles":17}], "nothing_matches":false,
//    "watch_out":[Warning],
//    "similar_cases":[Similar],
//    "cautions":[{"id":"high_voltage","name":"..","text":"..","because_of":["will not charge"]}],
//    "revision":2412,"cases_in_records":2400,"filter":{} (filter_form.hpp),
//    "note":"Counts are evidence, not a diagnosis. .."}
//
// Warning = {"kind":"earlier_repair","stated":"yes","text":"..","about":"replace turbocharger",
//   "cause":"wastegate_linkage:seized_open","share":Share,"minutes_at_stake":310,"how_often":0.8,
//   "expected_minutes":248,"cases":["case-7"]}; the dearest to ignore first (query/watch_out/).
//   "cause" is "" and the share 0 of 0 where there is none; cases: 20 at most, the last recorded
//   first.
//
// Watch out alone = {"understood":..,"watch_out":[Warning],"nothing_matches":false,"revision":2412,
//   "cases_in_records":2400,"filter":{},"note":".."}, each as in the answer.
//
// Similar = {"ref":"case-7","opened":"2026-03-02","vehicle":"..","cause":"..",
//   "fixes":["replace wastegate_linkage"],"outcome":"stayed_fixed","score":9.1,
//   "snippet":{"text":"..","marked":[{"begin":0,"end":4}]}}
//
// Search page = {"cases":[Similar],"matches":57,"next_cursor":"..","revision":2412}; next_cursor
// is "" on the last page.
//
// What a text says, asked alone, is the same object as "understood".
// Pure functions, any thread; they cannot fail. One line, no trailing newline.
#pragma once

#include <string>

#include "indexer/vocabulary.hpp"
#include "query/answer.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {

[[nodiscard]] std::string answer_json(const Answer& answer, const Vocabulary& vocabulary);

// Only what to watch out for, with what was understood.
[[nodiscard]] std::string watch_out_json(const Answer& answer, const Vocabulary& vocabulary);

[[nodiscard]] std::string understood_json(const Understood& understood,
                                          const Vocabulary& vocabulary);

[[nodiscard]] std::string search_page_json(const SearchPage& page);

}  // namespace shoplore
