// What went with a fix, and what was missed when it was left out.
#include "query/repair_plan/parts_together.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/repair_plan/made_cases.hpp"

namespace shoplore {
namespace {

using testing::add_lives;
using testing::all_of;
using ::testing::ElementsAre;
using testing::plan_case;

const std::string kCoil = "replace ignition_coil", kSeal = "replace plug_well_seal",
                  kPlugs = "replace spark_plug";

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

TEST(PartsTogether, CountsWhatWasDoneBesideEachFix) {
  const std::vector<PlanCase> cases{plan_case("a", {kCoil, kSeal}), plan_case("b", {kCoil}),
                                    plan_case("c", {kCoil, kSeal, kPlugs}),
                                    plan_case("d", {kPlugs})};
  const auto companies = fixes_beside(cases, {kCoil, kSeal});
  ASSERT_EQ(companies.size(), 2U);
  EXPECT_EQ(companies[0].cases, 3U);
  ASSERT_EQ(companies[0].beside.size(), 2U);
  EXPECT_EQ(companies[0].beside[0].fix, kSeal);
  EXPECT_EQ(companies[0].beside[0].cases, 2U);
  EXPECT_EQ(companies[0].beside[1].fix, kPlugs);
  EXPECT_EQ(companies[1].cases, 2U);
}

PlanCase taking(const std::string& ref, std::vector<std::pair<const char*, double>> parts) {
  PlanCase one = plan_case(ref, {kCoil});
  for (const auto& [name, quantity] : parts) {
    Part& part = one.record.correction->parts.emplace_back();
    part.part = name;
    part.quantity = quantity;
  }
  return one;
}

TEST(PartsTogether, OnePartUnderAllItsNames) {
  const std::vector<PlanCase> cases{taking("a", {{"ignition coil", 1}}),
                                    taking("b", {{"Coil Pack", 1}, {"sticky  TAPE", 1}}),
                                    taking("c", {{"ignition_coil", 3}, {"ignition coil", 1}}),
                                    taking("d", {{"Sticky tape", 2}}), taking("e", {})};
  const PartsUsed used = parts_used(all_of(cases), words());
  EXPECT_EQ(used.out_of, 4U);
  ASSERT_EQ(used.parts.size(), 2U);
  EXPECT_EQ(used.parts[0].name, "ignition coil");
  EXPECT_EQ(used.parts[0].component, "ignition_coil");
  EXPECT_EQ(used.parts[0].cases, 3U);
  EXPECT_EQ(used.parts[0].usual_quantity, 1);
  EXPECT_EQ(used.parts[1].component, "");
  EXPECT_EQ(used.parts[1].cases, 2U);
}

// "coil alone: 9 of 11 came back; coil and seal: 1 of 14".
std::vector<FixLife> coil_and_seal() {
  std::vector<FixLife> lives;
  add_lives(lives, 9, {kCoil}, FixEnd::kCameBack);
  add_lives(lives, 2, {kCoil}, FixEnd::kStillFixed);
  add_lives(lives, 6, {kCoil}, FixEnd::kNotHeardOf);
  add_lives(lives, 1, {kCoil, kSeal}, FixEnd::kCameBack);
  add_lives(lives, 10, {kCoil, kSeal}, FixEnd::kStillFixed);
  add_lives(lives, 3, {kCoil, kSeal, kPlugs}, FixEnd::kStillFixed);
  return lives;
}

TEST(PartsTogether, TellsWhatWasMissedWhenItWasLeftOut) {
  const auto missed = missed_when_left_out(coil_and_seal());
  ASSERT_EQ(missed.size(), 1U);
  EXPECT_EQ(missed[0].fix, kCoil);
  EXPECT_EQ(missed[0].missed, kSeal);
  EXPECT_EQ(missed[0].alone.count, 9U);
  EXPECT_EQ(missed[0].alone.out_of, 11U);
  EXPECT_EQ(missed[0].together.count, 1U);
  EXPECT_EQ(missed[0].together.out_of, 14U);
  EXPECT_GT(missed[0].alone.interval.low, missed[0].together.interval.high);
}

// The gasket was never changed without the seal: it takes no credit for it.
TEST(PartsTogether, WhatOnlyCameAlongIsNotTold) {
  const std::string gasket = "replace cam_cover_gasket";
  auto lives = coil_and_seal();
  add_lives(lives, 9, {kCoil, kSeal, gasket}, FixEnd::kStillFixed);
  ASSERT_EQ(missed_when_left_out(lives).size(), 1U);
  EXPECT_EQ(missed_when_left_out(lives)[0].missed, kSeal);
  add_lives(lives, 5, {kCoil, gasket}, FixEnd::kStillFixed);
  ASSERT_EQ(missed_when_left_out(lives).size(), 2U);
  EXPECT_EQ(missed_when_left_out(lives)[1].missed, gasket);
  EXPECT_EQ(missed_when_left_out(lives)[1].together.out_of, 14U);
}

struct NearMiss {
  const char* name;
  int alone_back, alone_fixed, with_back, with_fixed;
};

class MissedNearMisses : public ::testing::TestWithParam<NearMiss> {};

TEST_P(MissedNearMisses, AreNotTold) {
  std::vector<FixLife> lives;
  add_lives(lives, GetParam().alone_back, {kCoil}, FixEnd::kCameBack);
  add_lives(lives, GetParam().alone_fixed, {kCoil}, FixEnd::kStillFixed);
  add_lives(lives, GetParam().with_back, {kCoil, kSeal}, FixEnd::kCameBack);
  add_lives(lives, GetParam().with_fixed, {kCoil, kSeal}, FixEnd::kStillFixed);
  EXPECT_TRUE(missed_when_left_out(lives).empty());
}

INSTANTIATE_TEST_SUITE_P(Table, MissedNearMisses,
                         ::testing::Values(NearMiss{"FourAlone", 4, 0, 0, 20},
                                           NearMiss{"FourTogether", 20, 0, 0, 4},
                                           NearMiss{"IntervalsOverlap", 4, 6, 2, 8},
                                           NearMiss{"TogetherIsWorse", 1, 13, 9, 2},
                                           NearMiss{"NeverAlone", 0, 0, 1, 13}),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace shoplore
