#include "query/failure_mileage/failure_mileage.hpp"

#include <gtest/gtest.h>

#include "tests/query/failure_mileage/visit_lists.hpp"

namespace shoplore {
namespace {

using testing::kHose;
using testing::kLinkage;
using testing::Told;
using testing::vehicle_told;

FailureMileage mileage_of(const std::vector<VehicleHistory>& histories,
                          const VehicleScope& scope = {}) {
  auto answer = failure_mileage(histories, {kLinkage, scope});
  EXPECT_TRUE(answer) << describe(answer.error());
  return answer ? *answer : FailureMileage{};
}

// A life from that km to that km.
VehicleHistory lived(std::int64_t from, std::int64_t to, const std::string& end) {
  return vehicle_told("bw16d", {{"service", from}, {end, to}});
}

TEST(FailureMileage, QuartilesOfTheCases) {
  // R: quantile(c(60, 80, 100, 140, 150, 200), type = 7) gives 60, 85, 120, 147.5, 200.
  std::vector<VehicleHistory> histories;
  for (const std::int64_t km : {200, 60, 140, 80, 150, 100}) {
    histories.push_back(vehicle_told("bw16d", {{kLinkage, km * 1'000}}));
  }
  histories.push_back(vehicle_told("bw16d", {{kLinkage, {}}}));
  histories.push_back(vehicle_told("bw16d", {{kHose, {}, {}, {kLinkage}}}));
  const FailureMileage answer = mileage_of(histories);
  EXPECT_EQ(answer.cases.cases, 8U);
  EXPECT_EQ(answer.cases.beside_main, 1U);
  EXPECT_EQ(answer.cases.km.size(), 6U);
  const auto quartiles = answer.cases.quartiles();
  ASSERT_TRUE(quartiles);
  EXPECT_DOUBLE_EQ(quartiles->least, 60'000);
  EXPECT_DOUBLE_EQ(quartiles->quarter, 85'000);
  EXPECT_DOUBLE_EQ(quartiles->half, 120'000);
  EXPECT_DOUBLE_EQ(quartiles->three_quarters, 147'500);
  EXPECT_DOUBLE_EQ(quartiles->greatest, 200'000);
  EXPECT_FALSE(mileage_of({vehicle_told("bw16d", {{kLinkage, {}}})}).cases.quartiles());
}

TEST(FailureMileage, FewFailuresAreCountedAndNotFitted) {
  std::vector<VehicleHistory> histories{lived(0, 50'000, kLinkage), lived(0, 70'000, "service"),
                                        lived(0, 90'000, kLinkage)};
  const LifeAnswer two = mileage_of(histories).first;
  EXPECT_EQ(two.lives, 3U);
  EXPECT_EQ(two.failures, 2U);
  EXPECT_DOUBLE_EQ(two.km_at_risk, 210'000);
  EXPECT_FALSE(two.curve);
  EXPECT_FALSE(two.fit);
  EXPECT_FALSE(two.not_fitted.empty());
  histories.push_back(lived(0, 60'000, kLinkage));
  const LifeAnswer three = mileage_of(histories).first;
  EXPECT_TRUE(three.curve);
  EXPECT_TRUE(three.fit);
  EXPECT_TRUE(three.not_fitted.empty());
}

TEST(FailureMileage, WhatCannotBeFittedSaysWhy) {
  std::vector<VehicleHistory> histories;
  for (int i = 0; i < 4; ++i) histories.push_back(lived(0, 80'000, kLinkage));
  const LifeAnswer answer = mileage_of(histories).first;
  EXPECT_TRUE(answer.curve);
  EXPECT_FALSE(answer.fit);
  EXPECT_NE(answer.not_fitted.find("80000"), std::string::npos) << answer.not_fitted;
}

TEST(FailureMileage, ReplacedPartsAreShownFromFiveOn) {
  std::vector<VehicleHistory> histories;
  for (std::int64_t i = 0; i < 4; ++i) {
    histories.push_back(vehicle_told("bw16d", {{kLinkage, 90'000, {"replace wastegate_linkage"}},
                                               {"service", 100'000 + 1'000 * i}}));
  }
  EXPECT_FALSE(mileage_of(histories).since_replaced);
  histories.push_back(histories.front());
  const FailureMileage answer = mileage_of(histories);
  ASSERT_TRUE(answer.since_replaced);
  EXPECT_EQ(answer.since_replaced->lives, 5U);
  EXPECT_EQ(answer.since_replaced->failures, 0U);
  EXPECT_DOUBLE_EQ(answer.since_replaced->longest, 13'000);
}

// One vehicle alone at risk would take the curve to 0 at its failure, for good.
TEST(FailureMileage, ACurveBeginsWhereEnoughAreAtRisk) {
  std::vector<VehicleHistory> histories{lived(10'000, 20'000, kLinkage)};
  for (std::int64_t i = 0; i < 10; ++i) {
    histories.push_back(lived(30'000, 60'000 + 1'000 * i, i < 4 ? kLinkage : "service"));
  }
  const LifeAnswer answer = mileage_of(histories).first;
  EXPECT_EQ(answer.failures, 5U);
  EXPECT_DOUBLE_EQ(answer.starts, 20'000);
  ASSERT_TRUE(answer.curve);
  ASSERT_EQ(answer.curve->steps.size(), 4U);
  EXPECT_EQ(answer.curve->steps.front().at_risk, 10U);
  EXPECT_DOUBLE_EQ(answer.curve->steps.back().survival, .6);
  ASSERT_TRUE(answer.fit);
  EXPECT_DOUBLE_EQ(fitted_share_whole(answer, 20'000), 1);
  EXPECT_LT(fitted_share_whole(answer, 60'000), 1);
  EXPECT_EQ(answer.fit->weibull.failures, 5U);  // the fit leaves none out
}

TEST(FailureMileage, AnAgeIsAFigureOnlyWhereItWasSeenAndTellsSomething) {
  LifeAnswer life;
  life.starts = 20'000;
  life.longest = 300'000;
  const struct {
    const char* name;
    Estimate age;
    AgeTold told;
  } rows[] = {{"within", {90'000, 60'000, 130'000}, AgeTold::kTold},
              {"its bounds may lie outside", {30'000, 10'000, 90'000}, AgeTold::kTold},
              {"at the longest", {300'000, 200'000, 400'000}, AgeTold::kTold},
              {"tenfold", {90'000, 30'000, 300'000}, AgeTold::kTold},
              {"more than tenfold", {90'000, 29'999, 300'000}, AgeTold::kTooFew},
              {"before", {19'999, 10'000, 30'000}, AgeTold::kBeforeSeen},
              {"beyond", {300'001, 200'000, 400'000}, AgeTold::kBeyondSeen},
              {"no bound at all", {90'000, 0, 1e30}, AgeTold::kTooFew}};
  for (const auto& row : rows) {
    SCOPED_TRACE(row.name);
    EXPECT_EQ(age_told(life, row.age), row.told);
  }
}

TEST(FailureMileage, ACauseNeverSeenIsAnswered) {
  const auto answer = failure_mileage({lived(0, 50'000, kHose)}, {kLinkage, {}});
  ASSERT_TRUE(answer) << describe(answer.error());
  EXPECT_EQ(answer->cause, kLinkage);
  EXPECT_EQ(answer->cases.cases, 0U);
  EXPECT_EQ(answer->first.failures, 0U);
}

TEST(FailureMileage, TheScopeHoldsForCasesAndLives) {
  std::vector<VehicleHistory> histories{lived(0, 50'000, kLinkage)};
  histories.push_back(lived(0, 60'000, kLinkage));
  histories.back().engine_family = "cm20p";
  EXPECT_EQ(mileage_of(histories).cases.cases, 2U);
  const FailureMileage one = mileage_of(histories, {"", "CM20P"});
  EXPECT_EQ(one.cases.cases, 1U);
  EXPECT_EQ(one.first.lives, 1U);
  EXPECT_DOUBLE_EQ(one.first.longest, 60'000);
  EXPECT_EQ(mileage_of(histories, {"Elvetia", ""}).vehicles.in_scope, 0U);
}

}  // namespace
}  // namespace shoplore
