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

}  // namespace
}  // namespace shoplore
