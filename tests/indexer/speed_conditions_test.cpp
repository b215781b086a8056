#include "indexer/speed_conditions.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(SpeedConditions, AHighSpeedAndAWalkingPaceAreConditions) {
  const std::vector<NoteRow> table{
      {"misfire at 105 km/h", {"symptom misfire", "condition motorway"}},
      {"misfire at 105 kmh", {"symptom misfire", "condition motorway"}},
      {"misfire over 55 mph", {"symptom misfire", "condition motorway"}},
      {"misfire between 55 and 75 mph", {"symptom misfire", "condition motorway"}},
      {"misfire below 5 mph", {"symptom misfire", "condition walking_pace"}},
      {"misfire at 8 km/h", {"symptom misfire", "condition walking_pace"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(SpeedConditions, ASpeedBetweenABoundThatLeavesBothOpenAndOtherNumbersAreNone) {
  for (const char* text : {"misfire at 50 km/h", "misfire at 40 mph", "misfire below 105 km/h",
                           "misfire over 5 mph", "misfire 0 to 60 mph", "misfire at 1050 km/h"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom misfire"}) << text;
  }
}

TEST(SpeedConditions, AShopWithoutTheConditionFindsNone) {
  const auto vocabulary = Vocabulary::parse(
      {{"own", R"({"kind":"symptom","entries":[{"id":"misfire","name":"misfire"}]})"}});
  ASSERT_TRUE(vocabulary);
  const auto items = Recogniser(*vocabulary).recognise("misfire at 105 km/h").items;
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(line_of(items[0]), "symptom misfire");
}

}  // namespace
}  // namespace shoplore
