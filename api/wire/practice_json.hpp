// Rounds of practice, feedback and progress as JSON, and what a program sends to play.
//
// round: {"id":"a1-0f3c9a5d","kind":"cause","state":"open","difficulty":"hard","question":"..",
//   "about":"","case":{"opened":..,"vehicle":{..},"complaint":..,"symptoms":[..],..},
//   "choices":[{"number":1,"id":"..","name":".."}],
//   "steps":[{"kind":"belief","beliefs":[{"component":..,"failure":..,"name":..,"percent":60}]},
//            {"kind":"check","check":"..","name":"..","state":"answered","verdict":"fail",
//             "answer":"fail, 4.2 bar"}]}
//   "difficulty" and "case" only where a case is asked about; "about" is "" there. A check's state
//   is answered, not_recorded or unsafe; the verdict is "" unless answered.
// committed: {"round":{..},"feedback":{..}}; of a round's kind only what that kind has.
// Requests, read strictly; a place is a JSON Pointer:
//   new round  {"apprentice":"a1","kind":"cause","difficulty":"hard","seed":7}
//   belief     {"beliefs":[{"cause":"wastegate linkage seized open","percent":60}]}
//   check      {"check":"wastegate_linkage_by_hand"}
//   commitment {"cause":".."} or {"choice":2} or {"percent":20}
// Pure functions, any thread. One line, no trailing newline.
#pragma once

#include <string>
#include <string_view>

#include "query/practice/practice_desk.hpp"

namespace shoplore {

[[nodiscard]] std::string round_json(const RoundView& round, const Vocabulary& vocabulary);
[[nodiscard]] std::string committed_json(const PracticeDesk::Committed& committed,
                                         const Vocabulary& vocabulary);
[[nodiscard]] std::string progress_json(const PracticeProgress& progress,
                                        const Vocabulary& vocabulary);

[[nodiscard]] Result<RoundWish> round_wish_from_json(std::string_view text);
[[nodiscard]] Result<std::vector<StatedBelief>> beliefs_from_json(std::string_view text);
[[nodiscard]] Result<std::string> asked_check_from_json(std::string_view text);
[[nodiscard]] Result<Commitment> commitment_from_json(std::string_view text);

}  // namespace shoplore
