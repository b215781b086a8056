#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

Case case_of(const std::string& text) {
  Case record;
  record.opened = *parse_date("2026-03-31");
  add_recognised(record, built_in_recogniser().recognise(text));
  return record;
}

TEST(AddRecognised, AReadingStaysWithItsCheck) {
  const Case record = case_of("charging voltage 12.1 V");
  ASSERT_EQ(record.checks.size(), 1U);
  EXPECT_EQ(record.checks[0].verdict, Verdict::kFail);
  EXPECT_EQ(record.checks[0].reading->number, 12.1);
  EXPECT_EQ(record.checks[0].unit, "V");
}

TEST(AddRecognised, ASymptomKeepsHowOften) {
  for (const char* text :
       {"misfire now and then", "intermittent misfire", "not always misfiring"}) {
    const Case record = case_of(text);
    ASSERT_EQ(record.symptoms.size(), 1U) << text;
    EXPECT_EQ(record.symptoms[0].how_often, HowOften::kSometimes) << text;
  }
  EXPECT_EQ(case_of("misfire every time").symptoms.at(0).how_often, HowOften::kAlways);
  EXPECT_EQ(case_of("misfire").symptoms.at(0).how_often, std::nullopt);
}

TEST(AddRecognised, AnEarlierRepairKeepsItsMonth) {
  struct Row {
    const char *text, *when;
  };
  for (const Row& row :
       {Row{"coil replaced 4 mo ago elsewhere", "2025-11-30"},
        Row{"coil replaced a year ago", "2025-03-31"}, Row{"new coil last month", "2026-02-28"},
        Row{"coil changed here two weeks ago", "2026-03-31"}}) {
    const Case record = case_of(row.text);
    ASSERT_TRUE(record.earlier_repairs && record.earlier_repairs->size() == 1) << row.text;
    ASSERT_TRUE(record.earlier_repairs->front().when) << row.text;
    EXPECT_EQ(format_date(*record.earlier_repairs->front().when), row.when) << row.text;
  }
  EXPECT_FALSE(case_of("new coil").earlier_repairs->front().when);
}

}  // namespace
}  // namespace shoplore
