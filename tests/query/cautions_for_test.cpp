// Which cautions are called for, by what, and in which order.
#include "query/cautions_for.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::ElementsAre;

const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse({{"test",
                          R"({"kind":"caution","entries":[
                 {"id":"hot","name":"hot","how":"Let it cool."},
                 {"id":"springs","name":"springs","how":"Mind the spring."},
                 {"id":"high_voltage","name":"high voltage","how":"Stop."}]})"},
                         {"test2",
                          R"({"kind":"symptom","entries":[
                 {"id":"steam","name":"steam","cautions":["hot"]},
                 {"id":"no_charge","name":"no charge","cautions":["high_voltage"]}]})"},
                         {"test3",
                          R"({"kind":"check","entries":[{"id":"feel_hose","name":"feel the hose",
                 "cautions":["hot"]}]})"},
                         {"test4",
                          R"({"kind":"component","entries":[
                 {"id":"strut","name":"strut","cautions":["springs"]},
                 {"id":"hose","name":"hose","cautions":["hot"]},
                 {"id":"lamp","name":"lamp"}]})"}})
          .value();
  return vocabulary;
}

std::vector<std::string> ids(const std::vector<Caution>& cautions) {
  std::vector<std::string> names;
  for (const Caution& caution : cautions) names.push_back(caution.id);
  return names;
}

LikelyCause likely(const std::string& component, double probability) {
  LikelyCause cause;
  cause.component = component;
  cause.probability = probability;
  return cause;
}

TEST(CautionsFor, EachOnceWithEverythingThatNeedsIt) {
  const auto cautions =
      cautions_for("", {{"symptom:steam", "present"}, {"check:feel_hose", "fail"}},
                   {likely("hose", 0.5)}, {}, words());
  ASSERT_THAT(ids(cautions), ElementsAre("hot"));
  EXPECT_EQ(cautions[0].text, "Let it cool.");
  EXPECT_THAT(cautions[0].because_of, ElementsAre("feel the hose", "hose", "steam"));
}

TEST(CautionsFor, HighVoltageComesFirstThenTheMostNeeded) {
  const auto cautions = cautions_for("",
                                     {{"check:feel_hose", "pass"},
                                      {"earlier_repair:replace strut", "present"},
                                      {"symptom:no_charge", "present"},
                                      {"symptom:steam", "present"}},
                                     {}, {}, words());
  EXPECT_THAT(ids(cautions), ElementsAre("high_voltage", "hot", "springs"));
}

TEST(CautionsFor, WhatIsAbsentCallsForNothing) {
  EXPECT_TRUE(
      cautions_for("", {{"symptom:steam", "absent"}, {"earlier_repair:replace strut", "absent"}},
                   {}, {}, words())
          .empty());
}

TEST(CautionsFor, OnlyLikelyCausesCount) {
  EXPECT_TRUE(
      cautions_for("", {}, {likely("strut", 0.09), likely("lamp", 0.9)}, {}, words()).empty());
  EXPECT_THAT(ids(cautions_for("", {}, {likely("strut", 0.1)}, {}, words())),
              ElementsAre("springs"));
}

TEST(CautionsFor, AnyWorkByWhatItHasToDoWith) {
  const auto cautions = cautions_of({{EntryKind::kComponent, "strut"},
                                     {EntryKind::kComponent, "hose"},
                                     {EntryKind::kCheck, "feel_hose"},
                                     {EntryKind::kSymptom, "hose"},
                                     {EntryKind::kComponent, "unheard_of"}},
                                    Fuel::kHybrid, words());
  ASSERT_THAT(ids(cautions), ElementsAre("high_voltage", "hot", "springs"));
  EXPECT_THAT(cautions[0].because_of, ElementsAre("hybrid drive"));
  EXPECT_THAT(cautions[1].because_of, ElementsAre("feel the hose", "hose"));
  EXPECT_TRUE(cautions_of({}, Fuel::kDiesel, words()).empty());
}

TEST(CautionsFor, UnknownWordsCallForNothing) {
  EXPECT_TRUE(cautions_for("", {{"symptom:unheard_of", "present"}, {"make", "arlune"}},
                           {likely("unheard_of", 1)}, {}, words())
                  .empty());
}

TEST(CautionsFor, RepairsOnSuspicionAndChecksBringTheirs) {
  CheckAdvice next;
  next.repair = RepairOnSuspicion{{{"strut", "broken", .6, 60}}, 60, 90};
  EXPECT_THAT(ids(cautions_for("", {}, {}, next, words())), ElementsAre("springs"));
}

TEST(CautionsFor, BrakesInDoubtComeFirstAndKeepChecksOffTheRoad) {
  const Vocabulary built_in = Vocabulary::built_in().value();
  const std::vector<EvidenceItem> soft{{"symptom:brake_pedal_soft", "present"},
                                       {"symptom:lack_of_power", "present"}};
  const auto cautions = cautions_for("", soft, {}, {}, built_in);
  ASSERT_FALSE(cautions.empty());
  EXPECT_EQ(cautions[0].id, "unsafe_to_drive");
  const auto unsafe = unsafe_checks(soft, {}, built_in);
  EXPECT_TRUE(unsafe.contains("boost_log"));
  EXPECT_FALSE(unsafe.contains("wastegate_linkage_by_hand"));
  EXPECT_TRUE(unsafe_checks({{"symptom:lack_of_power", "present"}}, {}, built_in).empty());
}

TEST(CautionsFor, ElectricDriveIsHighVoltageWhateverTheComplaint) {
  const auto cautions =
      cautions_for("", {{"fuel", "electric"}, {"symptom:lack_of_power", "present"}}, {}, {},
                   Vocabulary::built_in().value());
  ASSERT_FALSE(cautions.empty());
  EXPECT_EQ(cautions[0].id, "high_voltage");
}

// With no record at all: the built-in vocabulary warns by the symptom alone.
TEST(CautionsFor, AnIsolationWarningStopsEverything) {
  const Vocabulary built_in = Vocabulary::built_in().value();
  const auto cautions = cautions_for(
      "", {{"symptom:isolation_warning", "present"}, {"fuel", "electric"}}, {}, {}, built_in);
  ASSERT_FALSE(cautions.empty());
  EXPECT_EQ(cautions[0].id, "high_voltage");
}

TEST(CautionsFor, WordsOfDangerNeedNoFinding) {
  const Vocabulary built_in = Vocabulary::built_in().value();
  const struct {
    const char* text;
    const char* caution;
  } rows[] = {{"high voltage cable damaged", "high_voltage"},
              {"Orange cable hanging down", "high_voltage"},
              {"no brakes", "unsafe_to_drive"},
              {"steering locks up", "unsafe_to_drive"},
              {"car won't stop", "unsafe_to_drive"},
              {"crash, airbag deployed", "airbag_igniter"},
              {"battery on fire", "fire_after_electrical_smell"}};
  for (const auto& row : rows) {
    const auto cautions = cautions_for(row.text, {}, {}, {}, built_in);
    ASSERT_EQ(cautions.size(), 1U) << row.text;
    EXPECT_EQ(cautions.front().id, row.caution) << row.text;
    EXPECT_TRUE(is_forbidding(cautions.front())) << row.text;
  }
  for (const char* harmless : {"brakes squeal", "high idle", "orange paint", "fires up late", ""}) {
    EXPECT_TRUE(cautions_for(harmless, {}, {}, {}, built_in).empty()) << harmless;
  }
}

}  // namespace
}  // namespace shoplore
