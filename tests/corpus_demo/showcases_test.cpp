#include "corpus-demo/showcases.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>

#include "indexer/case_json.hpp"
#include "indexer/case_rules.hpp"

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

TEST(Showcases, AreTwentyFourInTheOrderOfTheirRefs) {
  const auto cases = showcases();
  ASSERT_EQ(cases.size(), 24u);
  for (std::size_t i = 0; i < cases.size(); ++i) {
    EXPECT_EQ(cases[i].ref, fmt::format("show-{:02}", i + 1));
  }
}

TEST(Showcases, EveryOneCanBeReadAndKeepsTheRules) {
  for (const auto& written : {engine_showcases(), electrics_showcases(), chassis_showcases()}) {
    for (const std::string_view text : written) {
      const auto read = case_from_json(text);
      ASSERT_TRUE(read) << describe(read.error()) << "\n" << text.substr(0, 60);
      const auto kept = check_rules(*read, vocabulary());
      EXPECT_TRUE(kept) << read->ref << " " << describe(kept.error());
    }
  }
}

TEST(Showcases, TellTheirLessonAtLength) {
  for (const Case& each : showcases()) {
    EXPECT_GT(each.complaint.size(), 25u) << each.ref;
    if (each.state != CaseState::kEnquiry) {
      EXPECT_GT(each.notes.size(), 90u) << each.ref;
    }
    EXPECT_FALSE(each.symptoms.empty()) << each.ref;
    if (each.state != CaseState::kClosed) continue;
    EXPECT_FALSE(each.checks.empty()) << each.ref;
    EXPECT_FALSE(each.correction->fixes.empty()) << each.ref;
    EXPECT_TRUE(each.outcome) << each.ref;
  }
}

TEST(Showcases, WhatFollowsFollowsTheSameVehicle) {
  std::map<std::string, Case> by_ref;
  int comebacks = 0;
  for (const Case& each : showcases()) {
    by_ref[each.ref] = each;
    if (each.follows.empty()) continue;
    ++comebacks;
    ASSERT_TRUE(by_ref.contains(each.follows)) << each.ref;
    const Case& before = by_ref[each.follows];
    EXPECT_EQ(before.vehicle.token, each.vehicle.token);
    EXPECT_EQ(before.outcome->status, OutcomeStatus::kCameBack);
    EXPECT_TRUE(before.outcome->as_of == each.opened);
  }
  EXPECT_EQ(comebacks, 2);
}

TEST(Showcases, SomeAdmitThatACheckMisled) {
  int misled = 0;
  for (const Case& each : showcases()) {
    for (const Check& check : each.checks) misled += check.later == Later::kMisled ? 1 : 0;
  }
  EXPECT_GE(misled, 4);
}

}  // namespace
}  // namespace shoplore
