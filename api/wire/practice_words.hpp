// What practice says to a person, the same on a terminal and over HTTP.
//
// Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>

#include "indexer/vocabulary.hpp"
#include "query/practice/practice_progress.hpp"

namespace shoplore {

// What the round asks.
[[nodiscard]] std::string practice_question(const RoundView& round, const Vocabulary& vocabulary);

// A choice for people.
[[nodiscard]] std::string practice_choice(PracticeKind kind, std::string_view choice,
                                          const Vocabulary& vocabulary);

// What became of asking for a check: "fail, 4.2 bar", "not recorded in this case; not counted
// against you", or why it is not done.
[[nodiscard]] std::string practice_answer(const PracticeStep& step);

// How far what the apprentice says can be trusted, in a sentence or two.
[[nodiscard]] std::string calibration_sentence(const Calibration& calibration);

}  // namespace shoplore
