#include "indexer/check_ranges.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(CheckRanges, TheVerdictOfAReadingKeepsTheEndsOfTheRange) {
  Entry check;
  check.unit = "V";
  check.low = 10;
  check.high = 12;
  struct Row {
    double value;
    const char* unit;
    std::optional<Verdict> expected;
  };
  for (const Row& row : {Row{10, "V", Verdict::kPass}, Row{12, "V", Verdict::kPass},
                         Row{9.99, "V", Verdict::kFail}, Row{12.01, "V", Verdict::kFail},
                         Row{11000, "mV", Verdict::kPass}, Row{11, "bar", std::nullopt}}) {
    EXPECT_EQ(verdict_of(check, Reading{row.value, ""}, row.unit), row.expected) << row.value;
  }
  EXPECT_EQ(verdict_of(check, Reading{std::nullopt, "OL"}, ""), std::nullopt);
  check.unit = "ohm";
  EXPECT_EQ(verdict_of(check, Reading{std::nullopt, "OL"}, ""), Verdict::kFail);
}

TEST(CheckRanges, ARangeIsSaidByTheEndsItHas) {
  Entry check;
  check.unit = "V";
  check.low = 12.4;
  EXPECT_EQ(range_text(check), "at least 12.4 V");
  check.high = 12.8;
  EXPECT_EQ(range_text(check), "12.4 to 12.8 V");
  check.low.reset();
  EXPECT_EQ(range_text(check), "at most 12.8 V");
}

TEST(CheckRanges, ACheckMeasuresItsQuantityInAnyUnit) {
  Entry check;
  EXPECT_TRUE(can_measure(check, ""));
  check.unit = "V";
  EXPECT_TRUE(can_measure(check, "mV"));
  EXPECT_FALSE(can_measure(check, "bar"));
  EXPECT_FALSE(can_measure(check, ""));
}

TEST(CheckRanges, DegreesOfATemperatureAreNoAngle) {
  const std::vector<NoteRow> table{
      {"19 degrees out of the vents", {"reading 19 C", "check ac_vent_temperature fail"}},
      {"flywheel play 9 degrees", {"check flywheel_play pass", "reading 9 deg"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
