// Whose turn it is: what is due, mixed with what was never seen and what was seen lately, so that
// what comes up does not tell what it is.
//
// Of every ten, about five are due (the longest overdue first), three never seen, two seen lately;
// a group with nobody in it gives its share to the others. What was asked last comes last.
// Pure but for the generator.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "query/practice/apprentice_record.hpp"

namespace shoplore {

// All of the subjects in the order they are to be tried.
[[nodiscard]] std::vector<std::string> subjects_in_turn(const std::vector<std::string>& subjects,
                                                        PracticeKind kind,
                                                        const ApprenticeRecord& record, Date today,
                                                        std::mt19937_64& random);

}  // namespace shoplore
