#include "query/practice/belief.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace shoplore {
namespace {

using ::testing::HasSubstr;

// Three causes with cases and one whose cases were all withdrawn.
struct Shop {
  CauseTable causes;
  std::vector<std::uint32_t> seen{7, 9, 0, 6};
  Shop() {
    for (const char* key : {"linkage:seized", "hose:split", "gone:worn", "vanes:stuck"}) {
      static_cast<void>(causes.number(key));
    }
  }
};

TEST(Belief, WhatIsLeftOverGoesEvenlyToEverythingElse) {
  const Shop shop;
  const auto forecast = forecast_of({{"linkage:seized", 60}}, shop.causes, shop.seen);
  // 40 % over two other causes with cases and one the records lack.
  const std::vector<double> expected{.6, .4 / 3, 0, .4 / 3, .4 / 3};
  ASSERT_EQ(forecast.size(), expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(forecast[i], expected[i], 1e-12);
}

// By hand, truth the linkage, 60 and 30 percent said: p = .6, .3, 0, .05, .05.
// Brier = .4^2 + .3^2 + 0 + .05^2 + .05^2 = .255; points 100 (1 - .1275) = 87.25.
// Truth the hose: .6^2 + .7^2 + 2 x .05^2 = .855; points 57.25.
// Truth the vanes, left over: .6^2 + .3^2 + .95^2 + .05^2 = 1.355; points 32.25.
TEST(Belief, ScoresAreThoseWorkedOutByHand) {
  const Shop shop;
  const auto forecast =
      forecast_of({{"linkage:seized", 60}, {"hose:split", 30}}, shop.causes, shop.seen);
  struct Row {
    CauseNumber truth;
    double log, brier, points;
  };
  for (const Row& row : {Row{0, std::log(.6), .255, 87.25}, Row{1, std::log(.3), .855, 57.25},
                         Row{3, std::log(.05), 1.355, 32.25}}) {
    const ProperScore score = proper_score(forecast, row.truth);
    EXPECT_NEAR(score.log, row.log, 1e-12);
    EXPECT_NEAR(score.brier, row.brier, 1e-12);
    EXPECT_NEAR(score.points, row.points, 1e-10);
  }
}

TEST(Belief, TheScaleRunsFromAllOnAnotherToAllOnTheTruth) {
  const Shop shop;
  const auto points = [&](const std::string& said) {
    return proper_score(forecast_of({{said, 100}}, shop.causes, shop.seen), 0).points;
  };
  EXPECT_NEAR(points("linkage:seized"), 100, 1e-12);
  EXPECT_NEAR(points("hose:split"), 0, 1e-12);
  EXPECT_EQ(proper_score(forecast_of({{"hose:split", 100}}, shop.causes, shop.seen), 0).log,
            std::log(kLeastProbability));
}

// Proper: whoever believes p expects most from saying p.
TEST(Belief, NobodyGainsBySayingOtherThanHeBelieves) {
  const std::uint64_t seed = 20'260'105;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> uniform(.01, 1);
  const auto drawn = [&] {
    std::vector<double> p;
    double sum = 0;
    for (int i = 0; i < 4; ++i) sum += p.emplace_back(uniform(random));
    for (double& each : p) each /= sum;
    return p;
  };
  const auto expected = [](const std::vector<double>& believed, const std::vector<double>& said) {
    ProperScore sum;
    for (CauseNumber c = 0; c < 3; ++c) {
      const ProperScore score = proper_score(said, c);
      sum.points += believed[c] * score.points;
      sum.log += believed[c] * score.log;
    }
    return sum;
  };
  for (int i = 0; i < 500; ++i) {
    std::vector<double> believed = drawn();
    believed[3] = 0;  // the truth is one of the causes
    const double sum = believed[0] + believed[1] + believed[2];
    for (double& each : believed) each /= sum;
    const std::vector<double> said = drawn();
    EXPECT_GE(expected(believed, believed).points, expected(believed, said).points);
    EXPECT_GE(expected(believed, believed).log, expected(believed, said).log);
  }
}

TEST(Belief, WrongStatementsAreRefusedByName) {
  struct Row {
    const char* name;
    std::vector<Belief> beliefs;
    const char* place;
    const char* says;
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const std::vector<Row> rows{
      {"none", {}, "/beliefs", "at least one"},
      {"over 100 together", {{"a:b", 60}, {"c:d", 41}}, "/beliefs", "101 % together"},
      {"over 100 alone", {{"a:b", 120}}, "/beliefs/0", "120 % is more than 100"},
      {"negative", {{"a:b", 10}, {"c:d", -5}}, "/beliefs/1", "-5 % is less than nothing"},
      {"not a number", {{"a:b", nan}}, "/beliefs/0", "not a number"},
      {"twice", {{"a:b", 10}, {"a:b", 20}}, "/beliefs/1", "twice"},
      {"too many", std::vector<Belief>(kMostBeliefs + 1, {"a:b", 1}), "/beliefs", "at most 20"}};
  for (const Row& row : rows) {
    SCOPED_TRACE(row.name);
    const auto checked = check_beliefs(row.beliefs);
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(checked.error().place, row.place);
    EXPECT_THAT(checked.error().message, HasSubstr(row.says));
  }
}

TEST(Belief, ThreeRoundedThirdsAreTaken) {
  EXPECT_TRUE(check_beliefs({{"a:b", 33.34}, {"c:d", 33.34}, {"e:f", 33.34}}));
  const Shop shop;
  const auto forecast =
      forecast_of({{"linkage:seized", 100}, {"hose:split", .04}}, shop.causes, shop.seen);
  EXPECT_NEAR(forecast[0], 100 / 100.04, 1e-12);
  EXPECT_GE(proper_score(forecast, 1).points, 0);
  EXPECT_TRUE(check_beliefs({{"a:b", 100}}));
  EXPECT_TRUE(check_beliefs({{"a:b", 0}}));
}

TEST(Belief, GradesFollowThePoints) {
  struct Row {
    double points, records;
    YesNo committed;
    int grade;
  };
  const std::vector<Row> rows{
      {90, 100, YesNo::kYes, 5},   {89.9, 100, YesNo::kYes, 4}, {80, 100, YesNo::kYes, 4},
      {79.9, 100, YesNo::kYes, 3}, {65, 100, YesNo::kYes, 3},   {64.9, 100, YesNo::kYes, 2},
      {50, 100, YesNo::kYes, 2},   {49.9, 100, YesNo::kYes, 1}, {25, 100, YesNo::kYes, 1},
      {24.9, 100, YesNo::kYes, 0}, {60, 65, YesNo::kYes, 4},  // as good as the records
      {60, 65.1, YesNo::kYes, 2},                             // not quite
      {49, 20, YesNo::kYes, 1},  // better than the records and still worse than nothing said
      {95, 95, YesNo::kNo, 2}};  // the wrong cause committed to
  for (const Row& row : rows) {
    EXPECT_EQ(grade_of(row.points, row.records, row.committed), row.grade) << row.points;
  }
}

}  // namespace
}  // namespace shoplore
