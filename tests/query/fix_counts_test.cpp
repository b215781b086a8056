// Fixes by recurrence, against counts worked out by hand.
#include "query/fix_counts.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

constexpr auto kStayed = OutcomeStatus::kStayedFixed;
constexpr auto kBack = OutcomeStatus::kCameBack;
constexpr auto kOpenEnded = OutcomeStatus::kUnknown;

const std::vector<ProfileCount> kProfiles{
    {{"seal:leaks", kBack, {"replace coil"}}, 9},
    {{"seal:leaks", kStayed, {"replace coil"}}, 2},
    {{"seal:leaks", kBack, {"replace coil", "replace seal"}}, 1},
    {{"seal:leaks", kStayed, {"replace coil", "replace seal"}}, 13},
    {{"seal:leaks", kOpenEnded, {"replace coil", "replace seal"}}, 4},
    {{"seal:leaks", kStayed, {}}, 3},
    {{"coil:dead", kStayed, {"replace coil"}}, 50}};

std::vector<std::vector<std::string>> keys(const std::vector<FixCount>& counts) {
  std::vector<std::vector<std::string>> names;
  for (const FixCount& count : counts) names.push_back(count.fixes);
  return names;
}

TEST(FixCounts, ACaseWithSeveralFixesCountsOnceUnderEach) {
  const auto fixes = single_fixes(kProfiles, "seal:leaks");
  ASSERT_EQ(keys(fixes),
            (std::vector<std::vector<std::string>>{{"replace coil"}, {"replace seal"}}));
  EXPECT_EQ(fixes[0].cases, 29U);  // 9 + 2 + 1 + 13 + 4
  EXPECT_EQ(fixes[0].stayed_fixed, 15U);
  EXPECT_EQ(fixes[0].came_back, 10U);
  EXPECT_EQ(fixes[0].unknown, 4U);
  EXPECT_EQ(fixes[1].cases, 18U);  // 1 + 13 + 4
}

TEST(FixCounts, WhatWasDoneTogetherCountsEachCaseOnce) {
  const auto fixes = fixes_together(kProfiles, "seal:leaks");
  ASSERT_EQ(keys(fixes), (std::vector<std::vector<std::string>>{{"replace coil", "replace seal"},
                                                                {"replace coil"}}));
  EXPECT_EQ(fixes[0].cases, 18U);
  EXPECT_EQ(fixes[0].came_back, 1U);
  EXPECT_EQ(fixes[1].cases, 11U);
  EXPECT_EQ(fixes[1].came_back, 9U);
}

TEST(FixCounts, AnUnknownOutcomeIsNoSuccess) {
  const auto fixes = fixes_together(kProfiles, "seal:leaks");
  EXPECT_EQ(fixes[0].stayed.count, 13U);
  EXPECT_EQ(fixes[0].stayed.out_of, 14U);
  EXPECT_EQ(fixes[0].stayed.interval, jeffreys(13, 14));
}

TEST(FixCounts, EqualCountsAreInOrderOfTheirKeys) {
  const auto fixes = single_fixes({{{"a:x", kStayed, {"replace b"}}, 2},
                                   {{"a:x", kStayed, {"replace a"}}, 2},
                                   {{"a:x", kStayed, {"adjust c"}}, 3}},
                                  "a:x");
  EXPECT_EQ(keys(fixes),
            (std::vector<std::vector<std::string>>{{"adjust c"}, {"replace a"}, {"replace b"}}));
}

TEST(FixCounts, AnotherCausesFixesDoNotCount) {
  EXPECT_TRUE(single_fixes(kProfiles, "seal").empty());
  EXPECT_TRUE(fixes_together(kProfiles, "hose:split").empty());
  EXPECT_EQ(single_fixes(kProfiles, "coil:dead").at(0).cases, 50U);
}

TEST(FixCounts, WithoutKnownOutcomesNothingIsClaimed) {
  const auto fixes = single_fixes({{{"a:x", kOpenEnded, {"replace a"}}, 4}}, "a:x");
  EXPECT_EQ(fixes.at(0).stayed.out_of, 0U);
  EXPECT_EQ(fixes.at(0).stayed.interval, (Interval{0, 1}));
}

}  // namespace
}  // namespace shoplore
