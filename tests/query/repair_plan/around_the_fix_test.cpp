// Removals, needs afterwards, traps and proof, counted over cases given outright.
#include "query/repair_plan/around_the_fix.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/repair_plan/made_cases.hpp"

namespace shoplore {
namespace {

using testing::all_of;
using ::testing::ElementsAre;
using testing::plan_case;

const std::string kCoil = "replace ignition_coil";

const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse({{"removals", R"({"kind":"removal","entries":[
               {"id":"plug_cover","name":"plug cover","minutes":3},
               {"id":"top_cover","name":"top cover","alias_of":"plug_cover"},
               {"id":"cam_cover","name":"cam cover","minutes":35},
               {"id":"rail","name":"rail"},
               {"id":"battery_tray","name":"battery tray","minutes":15}]})"},
                         {"components", R"({"kind":"component","entries":[
               {"id":"ignition_coil","name":"ignition coil"},
               {"id":"throttle_body","name":"throttle body","afterwards":["relearn the stops"]},
               {"id":"idle_valve","name":"idle valve","afterwards":["relearn the stops","x"]}]})"},
                         {"verifications", R"({"kind":"verification","entries":[
               {"id":"road_test","name":"road test"},
               {"id":"drive","name":"drive","alias_of":"road_test"},
               {"id":"scan","name":"scan"}]})"}})
          .value();
  return vocabulary;
}

PlanCase with_removals(std::vector<std::string> removals) {
  PlanCase one = plan_case("case", {kCoil});
  one.record.correction->removals = std::move(removals);
  return one;
}

std::vector<std::string> ids(const std::vector<PlannedRemoval>& removals) {
  std::vector<std::string> out;
  for (const PlannedRemoval& each : removals) out.push_back(each.id);
  return out;
}

TEST(AroundTheFix, RemovalsAreTheListMostCasesHadEachOnce) {
  const std::vector<PlanCase> cases{with_removals({"plug_cover", "cam_cover", "plug_cover"}),
                                    with_removals({"top_cover", "cam_cover"}),
                                    with_removals({"cam_cover", "battery_tray"}), with_removals({}),
                                    with_removals({"rail"})};
  const RemovalPlan plan = removals_for(all_of(cases), {}, words());
  EXPECT_EQ(plan.out_of, 4U);
  EXPECT_THAT(ids(plan.in_order), ElementsAre("plug_cover", "cam_cover"));
  EXPECT_EQ(plan.in_order[0].cases, 2U);
  EXPECT_EQ(plan.in_order[1].cases, 3U);
  EXPECT_DOUBLE_EQ(plan.minutes, 38);
  EXPECT_THAT(ids(plan.also_found), ElementsAre("battery_tray", "rail"));
  EXPECT_FALSE(plan.also_found[1].minutes);
}

TEST(AroundTheFix, WhatIsOffAlreadyCostsNothing) {
  const std::vector<PlanCase> cases{with_removals({"plug_cover", "cam_cover"})};
  const RemovalPlan plan = removals_for(all_of(cases), {"cam_cover"}, words());
  EXPECT_DOUBLE_EQ(plan.minutes, 3);
  EXPECT_EQ(plan.in_order[1].now, RemovalNow::kOffAlready);
  EXPECT_EQ(plan.in_order[0].now, RemovalNow::kToTakeOff);
}

TEST(AroundTheFix, NeedsAreSaidOnceAndWhatWasTaughtIsCounted) {
  const std::vector<PlanCase> cases{
      plan_case("a", {"replace throttle_body", "relearn throttle_body"}),
      plan_case("b", {"replace throttle_body"}), plan_case("c", {"relearn throttle_body"}),
      plan_case("d", {})};
  const auto needs = afterwards_of(cases, {"replace idle_valve", "replace throttle_body"}, words());
  ASSERT_EQ(needs.common.size(), 2U);
  EXPECT_EQ(needs.common[0].text, "relearn the stops");
  EXPECT_EQ(needs.common[0].component, "idle_valve");
  EXPECT_EQ(needs.common[1].text, "x");
  // Relearning alone was the repair, not something beside it.
  EXPECT_EQ(needs.out_of, 3U);
  ASSERT_EQ(needs.done.size(), 1U);
  EXPECT_EQ(needs.done[0].cases, 1U);
}

TEST(AroundTheFix, TrapsAreGroupedWhenAlike) {
  std::vector<PlanCase> cases{plan_case("a", {kCoil}), plan_case("b", {kCoil}),
                              plan_case("c", {kCoil}), plan_case("d", {kCoil})};
  cases[0].record.correction->traps = {"left-hand thread"};
  cases[1].record.correction->traps = {"coil alone comes back", "Coil alone   comes back!"};
  cases[2].record.correction->traps = {"Coil alone comes back"};
  cases[3].record.correction->traps = {"coil alone comes back"};
  const auto traps = traps_of(cases);
  ASSERT_EQ(traps.size(), 2U);
  EXPECT_EQ(traps[0].text, "coil alone comes back");
  EXPECT_THAT(traps[0].refs, ElementsAre("b", "c", "d"));
  EXPECT_THAT(traps[1].refs, ElementsAre("a"));
}

TEST(AroundTheFix, AProofThatCaughtSomethingCountsOnceACase) {
  std::vector<PlanCase> cases{plan_case("a", {kCoil}), plan_case("b", {kCoil}),
                              plan_case("c", {kCoil})};
  cases[0].record.verification = {{"road_test", Verdict::kFail}, {"drive", Verdict::kPass}};
  cases[1].record.verification = {{"road_test", Verdict::kUnclear}, {"scan", Verdict::kPass}};
  const auto steps = proof_steps(cases, words());
  ASSERT_EQ(steps.size(), 2U);
  EXPECT_EQ(steps[0].id, "road_test");
  EXPECT_EQ(steps[0].caught.count, 1U);
  EXPECT_EQ(steps[0].caught.out_of, 2U);
  EXPECT_EQ(steps[1].caught.count, 0U);
}

TEST(AroundTheFix, NothingRecordedIsNothing) {
  EXPECT_TRUE(removals_for({}, {}, words()).in_order.empty());
  EXPECT_TRUE(traps_of({}).empty());
  EXPECT_TRUE(proof_steps({}, words()).empty());
  EXPECT_TRUE(afterwards_of({}, {}, words()).common.empty());
}

}  // namespace
}  // namespace shoplore
