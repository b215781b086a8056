// Whose turn it is: what is due, mixed with what is drawn by chance, so that what comes up does not
// tell what it is.
//
// Half of the turns go to what is due, the longest overdue first and what was asked last behind the
// others; half, and all where nothing is due, to any subject by chance, each as often as the like
// of it comes in (its weight), never seen, seen lately or due alike. Only these tell how far an
// apprentice's percentages can be trusted: what is due comes up because it was not known.
// Pure but for the generator.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "query/practice/apprentice_record.hpp"

namespace shoplore {

struct Subject {
  std::string key;
  std::uint32_t weight = 1;  // at least 1
};

struct Turn {
  std::string key;
  Drawn drawn = Drawn::kByChance;
};

// All of the subjects in the order they are to be tried.
[[nodiscard]] std::vector<Turn> subjects_in_turn(std::vector<Subject> subjects, PracticeKind kind,
                                                 const ApprenticeRecord& record, Date today,
                                                 std::mt19937_64& random);

}  // namespace shoplore
