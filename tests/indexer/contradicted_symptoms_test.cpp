#include "indexer/contradicted_symptoms.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(ContradictedSymptoms, WhatIsThereAtTimesIsThere) {
  EXPECT_EQ(lines_of("misfires uphill, never misfires in town"),
            (std::vector<std::string>{"symptom misfire", "condition uphill"}));
}

TEST(ContradictedSymptoms, AQuestionGivesWayToItsAnswerAndToDoubt) {
  const std::vector<NoteRow> table{
      {"Is there misfire? It does not misfire", {"symptom misfire absent"}},
      {"Misfire? can't say", {}},
      {"Misfire? not sure", {}},
      {"Misfire? no idea", {}},
      {"Misfire? Yes", {"symptom misfire"}},
      {"Misfire? And it misfires at idle, not sure why", {"symptom misfire", "condition idle"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
