#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(CarriedPhrases, AThingSaidBeforeIsMeantAgain) {
  const std::vector<NoteRow> table{
      {"clutch slips, no judder", {"symptom clutch_slips", "symptom clutch_judders absent"}},
      {"clutch slips uphill, pedal isn't heavy",
       {"symptom clutch_slips", "condition uphill", "symptom clutch_pedal_heavy absent"}},
      {"brakes drag, don't squeal", {"symptom brakes_drag", "symptom brake_squeal absent"}},
      {"headlamp out. supply 12.4 V",
       {"symptom headlamp_out", "check lamp_supply pass", "reading 12.4 V"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(CarriedPhrases, WithoutAThingNothingIsMeant) {
  EXPECT_EQ(lines_of("supply 12.4 V"), std::vector<std::string>{"reading 12.4 V"});
}

TEST(CarriedPhrases, AThingLongPastIsForgotten) {
  EXPECT_EQ(lines_of("headlamp out. he waits. he reads. he talks. he goes. supply 12.4 V"),
            (std::vector<std::string>{"symptom headlamp_out", "reading 12.4 V"}));
}

TEST(CarriedPhrases, TheFirstWordOfAPairTellsWhichThing) {
  const std::vector<NoteRow> table{
      {"clutch pedal heavy. It doesn't judder",
       {"symptom clutch_pedal_heavy", "symptom clutch_judders absent"}},
      {"pump charged for ten minutes", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
