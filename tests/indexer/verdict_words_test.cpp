#include "indexer/verdict_words.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(VerdictWords, AreFoundAfterBeforeAndPastAComma) {
  const std::vector<NoteRow> table{
      {"compression test ok", {"check compression_test pass"}},
      {"compression test: fails", {"check compression_test fail"}},
      {"bad compression", {"check compression_test fail"}},
      {"compression test done, ok", {"check compression_test pass"}},
      {"compression test not good", {"check compression_test fail"}},
      {"fuel filter looked at, clean", {"check fuel_filter_look pass"}},
      {"block test positive", {"check block_test fail"}},
      {"block test negative", {"check block_test pass"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, WhatIsLackingMayBeGoodOrBadNews) {
  const std::vector<NoteRow> table{{"no play in ball joints", {"check ball_joint_play pass"}},
                                   {"spark tester: no spark", {"check spark_tester fail"}},
                                   {"smoke test no leaks", {"check smoke_test pass"}},
                                   {"lamp supply no voltage", {"check lamp_supply fail"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, NoChangeIsGoodAndPlayThatIsThereIsNot) {
  const std::vector<NoteRow> table{
      {"wiggle test no change", {"check wiggle_test pass"}},
      {"wiggle test: no difference", {"check wiggle_test pass"}},
      {"there is play in ball joint", {"check ball_joint_play fail"}},
      {"lower arm has play in ball joint", {"check ball_joint_play fail"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
  EXPECT_TRUE(lines_of("ball joint play").empty());
}

TEST(VerdictWords, AFindingBetweenOrAFullStopEndsTheSearch) {
  EXPECT_EQ(lines_of("compression test. ok"), std::vector<std::string>{});
  EXPECT_EQ(lines_of("compression test misfire ok"), std::vector<std::string>{"symptom misfire"});
}

TEST(VerdictWords, ADenialBeforeThePhraseTurnsBadNews) {
  const std::vector<NoteRow> table{
      {"no pins burnt in charge port", {"check charge_port_look pass"}},
      {"pins burnt in charge port", {"check charge_port_look fail"}},
      {"servo holds vacuum - fail", {"check brake_vacuum_hold fail"}},
      {"servo holds vacuum", {"check brake_vacuum_hold pass"}},
      {"ball joints checked and solid", {"check ball_joint_play pass"}},
      {"caliper slides solid", {"check caliper_slide_look fail"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, ASearchThatFindsNothingIsGoodNews) {
  const std::vector<NoteRow> table{
      {"ball joints shaken, couldn't feel any play", {"check ball_joint_play pass"}},
      {"ball joints: could not find play", {"check ball_joint_play pass"}},
      {"smoke test, can't see any leak", {"check smoke_test pass"}},
      {"smoke test: didn't find a leak", {"check smoke_test pass"}},
      {"spark tester, did not get a spark", {"check spark_tester fail"}},
      {"tested for combustion gas and there was none", {"check block_test pass"}},
      {"block test went yellow", {"check block_test fail"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, AnAnswerBelongsToWhatWasAsked) {
  const std::vector<NoteRow> table{
      {"ball joint play? can't tell", {"check ball_joint_play unclear"}},
      {"ball joint play? none", {"check ball_joint_play pass"}},
      {"compression ok? no", {"check compression_test fail"}},
      {"compression ok? yes", {"check compression_test pass"}},
      {"servo holds vacuum? no -> fail", {"check brake_vacuum_hold fail"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, StandBehindAListOfReadings) {
  const std::vector<NoteRow> table{
      {"compression 24 bar, 23 bar, 24 bar: good",
       {"check compression_test pass", "reading 24 bar", "reading 23 bar", "reading 24 bar"}},
      {"can high 2.6 V, can low 2.4 V, both ok",
       {"check network_voltage pass", "reading 2.6 V", "reading 2.4 V"}},
      {"can high 2.6 V - can low 0.4 V - neither good",
       {"check network_voltage fail", "reading 2.6 V", "reading 0.4 V"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, OfSeveralInARowTheBadOneDecides) {
  const std::vector<NoteRow> table{
      {"glow plugs: 1 ok 2 ok 3 open circuit 4 ok", {"check glow_plug_resistance fail"}},
      {"ball joints left ok, right loose", {"check ball_joint_play fail"}},
      {"ball joints left ok, right ok", {"check ball_joint_play pass"}},
      {"brake discs lipped but ok", {"check disc_thickness pass"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(VerdictWords, ColdAndHotAreTwoOfARow) {
  const std::vector<NoteRow> table{
      {"crank sensor resistance ok cold, open hot", {"check crank_sensor_resistance fail"}},
      {"crank sensor resistance ok cold, ok hot", {"check crank_sensor_resistance pass"}},
      {"flywheel play, 20 mm free movement, excessive",
       {"check flywheel_play fail", "reading 20 mm"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
