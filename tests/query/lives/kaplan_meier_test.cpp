#include "query/lives/kaplan_meier.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/query/lives/life_samples.hpp"

namespace shoplore {
namespace {

using namespace testing;

constexpr std::uint64_t kSeed = 7;
constexpr LifeLaw kTiedAndLate{1.5, 20, .5, true};

SurvivalCurve curve_of(const std::vector<Life>& lives) {
  return kaplan_meier(lives).value();
}

void expect_same(const SurvivalCurve& one, const SurvivalCurve& other) {
  ASSERT_EQ(one.steps.size(), other.steps.size());
  for (std::size_t i = 0; i < one.steps.size(); ++i) {
    EXPECT_EQ(one.steps[i].time, other.steps[i].time);
    EXPECT_EQ(one.steps[i].at_risk, other.steps[i].at_risk) << one.steps[i].time;
    EXPECT_EQ(one.steps[i].failed, other.steps[i].failed) << one.steps[i].time;
    EXPECT_DOUBLE_EQ(one.steps[i].survival, other.steps[i].survival) << one.steps[i].time;
    EXPECT_DOUBLE_EQ(one.steps[i].standard_error, other.steps[i].standard_error);
  }
}

// The definition, life by life.
void expect_definition(const std::vector<Life>& lives) {
  std::set<double> ages;
  for (const Life& life : lives) {
    if (life.failed) ages.insert(life.exit);
  }
  const SurvivalCurve curve = curve_of(lives);
  ASSERT_EQ(curve.steps.size(), ages.size());
  double survival = 1, sum = 0;
  auto step = curve.steps.begin();
  for (const double age : ages) {
    double at_risk = 0, failed = 0;
    for (const Life& life : lives) {
      if (life.exit >= age && life.entry.value_or(-1) < age) ++at_risk;
      if (life.failed && life.exit == age) ++failed;
    }
    survival *= 1 - failed / at_risk;
    sum += failed / (at_risk * (at_risk - failed));
    EXPECT_EQ(static_cast<double>(step->at_risk), at_risk) << age;
    EXPECT_EQ(static_cast<double>(step->failed), failed) << age;
    EXPECT_NEAR(step->survival, survival, 1e-12) << age;
    const double error = survival > 0 ? survival * std::sqrt(sum) : 0;
    EXPECT_NEAR(step->standard_error, error, 1e-12) << age;
    ++step;
  }
}

TEST(KaplanMeier, IsItsDefinitionLifeByLife) {
  std::mt19937_64 random(kSeed);
  for (std::size_t size = 1; size <= 60; ++size) {
    SCOPED_TRACE(size);
    expect_definition(draw_lives(size, kTiedAndLate, random));
  }
}

TEST(KaplanMeier, WithNothingCensoredItCounts) {
  const SurvivalCurve curve = curve_of({{3, true}, {1, true}, {4, true}, {1, true}, {5, true}});
  EXPECT_DOUBLE_EQ(survival_at(curve, .5)->survival, 1);
  EXPECT_DOUBLE_EQ(survival_at(curve, 1)->survival, .6) << "the step is at the failure itself";
  EXPECT_DOUBLE_EQ(survival_at(curve, 3.9)->survival, .4);
  EXPECT_EQ(survival_at(curve, 5)->survival, 0);
  EXPECT_NEAR(survival_at(curve, 1)->standard_error, std::sqrt(.6 * .4 / 5), 1e-12);
}

TEST(KaplanMeier, CensoredAtAFailureIsStillAtRiskAndEnteredThereIsNotYet) {
  const SurvivalCurve curve = curve_of({{6, true}, {6, false}, {9, false, 6}, {9, false, 5.9}});
  ASSERT_EQ(curve.steps.size(), 1U);
  EXPECT_EQ(curve.steps[0].at_risk, 3U);
}

TEST(KaplanMeier, OrderDoesNotMatter) {
  std::mt19937_64 random(kSeed);
  std::vector<Life> lives = draw_lives(80, kTiedAndLate, random);
  const SurvivalCurve before = curve_of(lives);
  std::shuffle(lives.begin(), lives.end(), random);
  expect_same(before, curve_of(lives));
}

TEST(KaplanMeier, ALifeSeenInTwoStretchesIsOneLife) {
  std::mt19937_64 random(kSeed);
  const std::vector<Life> lives = draw_lives(80, {2, 100, .4, false}, random);
  expect_same(curve_of(lives), curve_of(split_lives(lives, random)));
}

TEST(KaplanMeier, LivesOverBeforeTheFirstFailureChangeNothing) {
  std::vector<Life> lives{{5, true}, {7, false}, {8, true}, {9, false}};
  const SurvivalCurve before = curve_of(lives);
  lives.push_back({4.9, false});
  lives.push_back({4, false, 2});
  expect_same(before, curve_of(lives));
}

TEST(KaplanMeier, IgnoringLateEntryWouldFlatter) {
  // Half were first seen at 50; what failed before then never came. Counted as if watched from
  // new, they would make early failures look rare.
  std::mt19937_64 random(kSeed);
  std::vector<Life> lives = draw_lives(4000, {1, 100, .5, false}, random);
  const double true_share = std::exp(-.5);
  const auto honest = survival_at(curve_of(lives), 50);
  EXPECT_NEAR(honest->survival, true_share, 4 * honest->standard_error);
  for (Life& life : lives) life.entry.reset();
  const auto naive = survival_at(curve_of(lives), 50);
  EXPECT_GT(naive->survival, true_share + 4 * naive->standard_error);
}

TEST(KaplanMeier, BandsHoldTheCurveAndGrowWithConfidence) {
  std::mt19937_64 random(kSeed);
  const SurvivalCurve curve = curve_of(draw_lives(40, kTiedAndLate, random));
  for (const auto band : {SurvivalBand::kLogLog, SurvivalBand::kLog, SurvivalBand::kPlain}) {
    for (const SurvivalStep& step : curve.steps) {
      const auto narrow = survival_at(curve, step.time, band, .5);
      const auto wide = survival_at(curve, step.time, band, .99);
      ASSERT_EQ(narrow->interval.has_value(), step.survival > 0);
      if (!narrow->interval) continue;
      EXPECT_LE(0, wide->interval->low);
      EXPECT_LE(wide->interval->low, narrow->interval->low);
      EXPECT_LE(narrow->interval->low, step.survival);
      EXPECT_LE(step.survival, narrow->interval->high);
      EXPECT_LE(narrow->interval->high, wide->interval->high);
      EXPECT_LE(wide->interval->high, 1);
    }
  }
}

TEST(KaplanMeier, LogLogBandIsShownByDefault) {
  const SurvivalCurve curve = curve_of({{1, true}, {2, true}, {3, false}, {4, true}});
  EXPECT_EQ(survival_at(curve, 2)->interval,
            survival_at(curve, 2, SurvivalBand::kLogLog, .90)->interval);
}

TEST(KaplanMeier, WhereNothingIsKnownThereIsNoInterval) {
  const SurvivalCurve curve = curve_of({{3, true}, {5, true}, {4, false}});
  EXPECT_EQ(survival_at(curve, 2)->interval, std::nullopt) << "before the first failure";
  EXPECT_EQ(survival_at(curve, 5)->interval, std::nullopt) << "none left";
  EXPECT_TRUE(survival_at(curve, 3)->interval);
}

TEST(KaplanMeier, BeyondTheLongestLifeNothingIsSaid) {
  const SurvivalCurve open = curve_of({{3, true}, {7, false}});
  EXPECT_TRUE(survival_at(open, 7));
  EXPECT_EQ(survival_at(open, 7.1), std::nullopt);
  const SurvivalCurve over = curve_of({{3, true}, {7, true}});
  EXPECT_EQ(survival_at(over, 8)->survival, 0);
}

TEST(KaplanMeier, WithoutAFailureThereIsNoStep) {
  const SurvivalCurve curve = curve_of({{3, false}, {7, false}});
  EXPECT_TRUE(curve.steps.empty());
  EXPECT_EQ(survival_at(curve, 7)->survival, 1);
  EXPECT_EQ(survival_quantile(curve, .5).time, std::nullopt);
  EXPECT_EQ(survival_quantile(curve, .5).low, std::nullopt);
}

TEST(KaplanMeier, QuantileIsTheFirstAgeBelow) {
  const SurvivalCurve curve = curve_of({{1, true}, {2, true}, {3, true}, {4, true}});
  EXPECT_EQ(survival_quantile(curve, .25).time, 1);
  EXPECT_EQ(survival_quantile(curve, .5).time, 2);
  EXPECT_EQ(survival_quantile(curve, .51).time, 3);
}

TEST(KaplanMeier, RoundingSkipsNoStepOfAQuantile) {
  for (int count = 2; count <= 120; ++count) {
    std::vector<Life> lives;
    for (int i = 1; i <= count; ++i) lives.push_back({double(i), true});
    const SurvivalCurve curve = curve_of(lives);
    for (int failed = 1; failed < count; ++failed) {
      EXPECT_EQ(survival_quantile(curve, double(failed) / count).time, failed) << "of " << count;
    }
  }
}

TEST(KaplanMeier, QuantileIsInsideItsInterval) {
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 50; ++i) {
    const SurvivalCurve curve = curve_of(draw_lives(25, kTiedAndLate, random));
    for (const double share : {.1, .5, .9}) {
      const SurvivalQuantile quantile = survival_quantile(curve, share);
      if (!quantile.time) continue;
      ASSERT_TRUE(quantile.low);
      EXPECT_LE(*quantile.low, *quantile.time);
      EXPECT_GE(quantile.high.value_or(curve.longest), *quantile.time);
    }
  }
}

TEST(KaplanMeier, MeanToAHorizonIsTheAreaBelow) {
  const SurvivalCurve curve = curve_of({{2, true}, {4, true}, {6, false}, {6, false}});
  EXPECT_DOUBLE_EQ(restricted_mean(curve, 6).mean, 2 + 2 * .75 + 2 * .5);
  EXPECT_DOUBLE_EQ(restricted_mean(curve, 3).mean, 2 + .75);
  EXPECT_DOUBLE_EQ(restricted_mean(curve, 1).mean, 1);
  EXPECT_EQ(restricted_mean(curve, 1).standard_error, 0);
}

TEST(KaplanMeier, MeanOfCompleteLivesIsTheirMean) {
  const SurvivalCurve curve = curve_of({{2, true}, {4, true}, {9, true}});
  EXPECT_NEAR(restricted_mean(curve, 9).mean, 5, 1e-12);
  // Greenwood's variance of a complete sample divides by n where the usual one divides by n - 1.
  EXPECT_NEAR(restricted_mean(curve, 9).standard_error, std::sqrt((9. + 1 + 16) / 3 / 3), 1e-12);
}

TEST(KaplanMeier, BadLivesAreAnError) {
  EXPECT_EQ(kaplan_meier({}).error().code, ErrorCode::kInvalidInput);
  const std::vector<Life> lives{{4, true}, {3, true, 3}};
  EXPECT_EQ(kaplan_meier(lives).error().place, "life 2");
}

}  // namespace
}  // namespace shoplore
