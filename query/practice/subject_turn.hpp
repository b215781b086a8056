// Whose turn it is: what is due, mixed with what comes up by chance, so that what comes up does not
// tell what it is.
//
// Half of the turns go to what is due, the longest overdue first and what was asked last behind the
// others; half, and all where nothing is due, to any subject by chance, never seen, seen lately or
// due alike. What is due comes up because it was not known: only what comes up by chance tells how
// far an apprentice's percentages can be trusted.
// Pure but for the generator.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "query/practice/apprentice_record.hpp"

namespace shoplore {

struct Turn {
  std::string subject;
  Drawn drawn = Drawn::kByChance;
};

// Requires: there are subjects.
[[nodiscard]] Turn next_turn(const std::vector<std::string>& subjects, PracticeKind kind,
                             const ApprenticeRecord& record, Date today, std::mt19937_64& random);

}  // namespace shoplore
