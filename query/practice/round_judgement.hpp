// Judging a round: what it was, what the answer is worth, what the records would have said.
//
// | kind        | right                      | points (0 to 100)                               |
// |-------------|----------------------------|-------------------------------------------------|
// | cause       | the case's cause           | of the last belief (belief.hpp)                 |
// | next_check  | the check worth most       | 100 x bits a minute of the chosen over the best |
// | code        | all three parts            | code_question.hpp                               |
// | vain_repair | the one that came back most| vain_repair_question.hpp                        |
// | check_trust | within the interval        | trust_question.hpp                              |
// A cause's grade follows belief.hpp; of the other kinds the points' own.
// Reads; keeps nothing. Errors: kConflict when the records changed so that nothing can be said,
// the store's, the counter's.
#pragma once

#include "query/practice/exercise_draw.hpp"

namespace shoplore {

struct Judgement {
  PracticeFeedback feedback;  // all but when it comes up again
  PracticeResult result;
};

// Requires: round.committed is set, and by then a belief is stated where its kind is cause.
[[nodiscard]] Result<Judgement> judged_round(const PracticeRound& round,
                                             const PracticeGround& ground);

}  // namespace shoplore
