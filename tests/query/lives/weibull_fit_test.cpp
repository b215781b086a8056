#include "query/lives/weibull_fit.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/query/lives/life_samples.hpp"

namespace shoplore {
namespace {

using namespace testing;

constexpr std::uint64_t kSeed = 23;
constexpr double kStep = 1e-3;

WeibullFit fit_of(const std::vector<Life>& lives) {
  return fit_weibull(lives).value();
}

// Written out life by life: densities of failures, survival of the others, given the entry.
double log_likelihood(const std::vector<Life>& lives, double log_scale, double log_shape) {
  const double shape = std::exp(log_shape), scale = std::exp(log_scale);
  double sum = 0;
  for (const Life& life : lives) {
    sum -= std::pow(life.exit / scale, shape) - std::pow(life.entry.value_or(0) / scale, shape);
    if (!life.failed) continue;
    sum += std::log(shape / scale) + (shape - 1) * std::log(life.exit / scale);
  }
  return sum;
}

std::vector<std::vector<Life>> samples() {
  std::mt19937_64 random(kSeed);
  std::vector<std::vector<Life>> all;
  for (const double shape : {.6, 1., 2., 5.}) {
    for (const double late : {0., .6, 1.}) {
      all.push_back(draw_lives(60, {shape, 3000, late, false}, random));
      all.push_back(draw_lives(60, {shape, 30, late, true}, random));
    }
  }
  return all;
}

TEST(WeibullFit, NoNeighbourIsMoreLikely) {
  for (const auto& lives : samples()) {
    const WeibullFit fit = fit_of(lives);
    const double scale = std::log(fit.scale), shape = std::log(fit.shape);
    EXPECT_NEAR(fit.log_likelihood, log_likelihood(lives, scale, shape), 1e-8);
    for (const double size : {1e-3, .1, 1.}) {
      for (const double along : {-size, 0., size}) {
        for (const double across : {-size, size}) {
          EXPECT_LT(log_likelihood(lives, scale + along, shape + across), fit.log_likelihood);
          EXPECT_LT(log_likelihood(lives, scale + across, shape + along), fit.log_likelihood);
        }
      }
    }
  }
}

TEST(WeibullFit, CovarianceInvertsTheCurvature) {
  for (const auto& lives : samples()) {
    const WeibullFit fit = fit_of(lives);
    const auto at = [&](double scale_steps, double shape_steps) {
      return log_likelihood(lives, std::log(fit.scale) + scale_steps * kStep,
                            std::log(fit.shape) + shape_steps * kStep);
    };
    const double square = kStep * kStep;
    const double first = -(at(1, 0) - 2 * at(0, 0) + at(-1, 0)) / square;
    const double second = -(at(0, 1) - 2 * at(0, 0) + at(0, -1)) / square;
    const double between = -(at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * square);
    const auto& [a, b, c] = fit.covariance;
    EXPECT_NEAR(first * a + between * c, 1, 2e-4);
    EXPECT_NEAR(between * c + second * b, 1, 2e-4);
    EXPECT_NEAR((first * c + between * b) * std::sqrt(a / b), 0, 2e-4);
  }
}

TEST(WeibullFit, AnotherUnitOnlyScales) {
  for (const auto& lives : samples()) {
    constexpr double kMilesPerKm = .621371;
    std::vector<Life> in_miles = lives;
    for (Life& life : in_miles) {
      life.exit *= kMilesPerKm;
      if (life.entry) *life.entry *= kMilesPerKm;
    }
    const WeibullFit km = fit_of(lives), miles = fit_of(in_miles);
    EXPECT_NEAR(miles.shape, km.shape, 1e-9 * km.shape);
    EXPECT_NEAR(miles.scale, km.scale * kMilesPerKm, 1e-9 * km.scale);
    EXPECT_NEAR(miles.log_likelihood,
                km.log_likelihood - static_cast<double>(km.failures) * std::log(kMilesPerKm), 1e-7);
    EXPECT_NEAR(miles.covariance.second, km.covariance.second, 1e-7 * km.covariance.second);
  }
}

TEST(WeibullFit, ALifeSeenInTwoStretchesIsOneLife) {
  std::mt19937_64 random(kSeed);
  for (const auto& lives : samples()) {
    const WeibullFit whole = fit_of(lives), split = fit_of(split_lives(lives, random));
    EXPECT_NEAR(split.shape, whole.shape, 1e-8 * whole.shape);
    EXPECT_NEAR(split.scale, whole.scale, 1e-8 * whole.scale);
    EXPECT_NEAR(split.log_likelihood, whole.log_likelihood, 1e-7);
    EXPECT_NEAR(split.covariance.first, whole.covariance.first, 1e-6 * whole.covariance.first);
    EXPECT_EQ(split.failures, whole.failures);
  }
}

TEST(WeibullFit, EntryAtNewIsNoEntry) {
  std::vector<Life> lives = samples()[0];
  const WeibullFit before = fit_of(lives);
  for (Life& life : lives) life.entry = 0;
  EXPECT_EQ(fit_of(lives).shape, before.shape);
  EXPECT_EQ(fit_of(lives).log_likelihood, before.log_likelihood);
}

TEST(WeibullFit, EveryLifeTwiceHalvesTheCovariance) {
  for (const auto& lives : samples()) {
    std::vector<Life> twice = lives;
    twice.insert(twice.end(), lives.begin(), lives.end());
    const WeibullFit one = fit_of(lives), two = fit_of(twice);
    EXPECT_NEAR(two.shape, one.shape, 1e-9 * one.shape);
    EXPECT_NEAR(two.covariance.first, one.covariance.first / 2, 1e-7 * one.covariance.first);
    EXPECT_NEAR(two.covariance.second, one.covariance.second / 2, 1e-7 * one.covariance.second);
  }
}

TEST(WeibullFit, FindsTheLawOnlyIfLateEntryIsSaid) {
  std::mt19937_64 random(kSeed);
  std::vector<Life> lives = draw_lives(3000, {.8, 100, .7, false}, random);
  const WeibullFit honest = fit_of(lives);
  EXPECT_NEAR(std::log(honest.scale / 100), 0, 4 * std::sqrt(honest.covariance.first));
  EXPECT_NEAR(std::log(honest.shape / .8), 0, 4 * std::sqrt(honest.covariance.second));
  for (Life& life : lives) life.entry.reset();
  const WeibullFit naive = fit_of(lives);
  EXPECT_GT(std::log(naive.scale / 100), 4 * std::sqrt(naive.covariance.first));
}

TEST(WeibullFit, IntervalsCoverAsOftenAsPromised) {
  std::mt19937_64 random(kSeed);
  constexpr int kRuns = 600;
  int shape = 0, b10 = 0, by_likelihood = 0;
  const double true_b10 = 100 * std::pow(-std::log(.9), 1 / 2.);
  for (int run = 0; run < kRuns; ++run) {
    const auto lives = draw_lives(60, {2, 100, .4, false}, random);
    const WeibullFit fit = fit_of(lives);
    const auto holds = [](const Estimate& estimate, double truth) {
      return estimate.low <= truth && truth <= estimate.high ? 1 : 0;
    };
    shape += holds(shape_of(fit), 2);
    b10 += holds(failed_by(fit, .1), true_b10);
    by_likelihood += holds(shape_by_likelihood(lives, fit), 2);
  }
  // 90 %, give or take 3 standard errors of 1.2 % and a small sample's bias.
  EXPECT_NEAR(shape / double{kRuns}, .90, .05) << kSeed;
  EXPECT_NEAR(b10 / double{kRuns}, .90, .05) << kSeed;
  EXPECT_NEAR(by_likelihood / double{kRuns}, .90, .05) << kSeed;
}

TEST(WeibullFit, QuantilesRiseAndInvertTheCurve) {
  const WeibullFit fit = fit_of(samples()[8]);
  double before = 0;
  for (const double share : {.001, .1, .5, .632, .9, .999}) {
    const Estimate age = failed_by(fit, share);
    EXPECT_GT(age.value, before);
    EXPECT_LT(age.low, age.value);
    EXPECT_GT(age.high, age.value);
    EXPECT_NEAR(1 - std::exp(-std::pow(age.value / fit.scale, fit.shape)), share, 1e-12);
    before = age.value;
  }
}

TEST(WeibullFit, QuantileAtTheScaleHasTheIntervalOfTheScale) {
  const WeibullFit fit = fit_of(samples()[8]);
  const Estimate age = failed_by(fit, 1 - std::exp(-1.));
  EXPECT_NEAR(age.low, scale_of(fit).low, 1e-6 * age.low);
  EXPECT_NEAR(age.high, scale_of(fit).high, 1e-6 * age.high);
}

TEST(WeibullFit, HazardRisesFallsOrIsUndecided) {
  std::mt19937_64 random(kSeed);
  const struct {
    double shape;
    std::size_t count;
    HazardTrend trend;
  } rows[] = {{3, 100, HazardTrend::kRising},
              {.5, 100, HazardTrend::kFalling},
              {1, 100, HazardTrend::kUndecided},
              {1.3, 8, HazardTrend::kUndecided}};
  for (const auto& row : rows) {
    const WeibullFit fit = fit_of(draw_lives(row.count, {row.shape, 100, 0, false}, random));
    EXPECT_EQ(hazard_trend(fit), row.trend) << row.shape;
  }
  WeibullFit edge;
  edge.shape = std::exp(1.0);
  edge.covariance.second = std::pow(1 / two_sided_z(.9), 2);  // low is 1
  edge.covariance.second *= 1 + 1e-9;
  EXPECT_EQ(hazard_trend(edge, .9), HazardTrend::kUndecided);
  EXPECT_EQ(hazard_trend(edge, .89), HazardTrend::kRising);
}

TEST(WeibullFit, LikelihoodIntervalEndsWhereTheProfileFell) {
  for (const auto& lives : samples()) {
    const WeibullFit fit = fit_of(lives);
    const Estimate shape = shape_by_likelihood(lives, fit, .95);
    for (const double end : {shape.low, shape.high}) {
      if (end == kLeastShape) continue;  // every smaller shape is in the interval
      const double drop = fit.log_likelihood - fit_weibull_of_shape(lives, end)->log_likelihood;
      EXPECT_NEAR(2 * drop, 3.841458820694124, 1e-6);  // chi-squared, 1 degree, .95
    }
    EXPECT_LT(shape.low, fit.shape);
    EXPECT_GT(shape.high, fit.shape);
  }
}

TEST(WeibullFit, KnownShapeNeedsOneFailure) {
  const std::vector<Life> lives{{30, false}, {40, true}, {50, false, 20}};
  const auto fit = fit_weibull_of_shape(lives, 1);
  ASSERT_TRUE(fit);
  EXPECT_DOUBLE_EQ(fit->scale, 100) << "time watched by failures";
  EXPECT_NEAR(fit->log_likelihood, -std::log(100.) - 1, 1e-12);
}

TEST(WeibullFit, KnownShapeAtTheBestShapeIsTheFit) {
  for (const auto& lives : samples()) {
    const WeibullFit fit = fit_of(lives);
    const auto known = fit_weibull_of_shape(lives, fit.shape);
    EXPECT_NEAR(known->scale, fit.scale, 1e-9 * fit.scale);
    EXPECT_NEAR(known->log_likelihood, fit.log_likelihood, 1e-9);
  }
}

TEST(WeibullFit, KnownShapeRefusesWhatItCannotUse) {
  const std::vector<Life> none{{3, false}, {4, false}}, at_zero{{3, false}, {0, true}};
  EXPECT_EQ(fit_weibull_of_shape(none, 1).error().message, "none failed");
  EXPECT_EQ(fit_weibull_of_shape(at_zero, 1).error().place, "life 2");
  EXPECT_FALSE(fit_weibull_of_shape({}, 1));
  EXPECT_TRUE(fit_weibull_of_shape(std::vector<Life>{{3, true}, {0, false}}, 2));
}

TEST(WeibullFit, MomentsAreThoseOfKnownLaws) {
  WeibullFit fit;
  fit.scale = 100;
  fit.shape = 1;  // exponential
  EXPECT_NEAR(moments_of(fit).mean, 100, 1e-10);
  EXPECT_NEAR(moments_of(fit).deviation, 100, 1e-10);
  fit.shape = 2;  // Rayleigh
  EXPECT_NEAR(moments_of(fit).mean, 50 * std::sqrt(std::acos(-1.)), 1e-10);
  EXPECT_NEAR(moments_of(fit).deviation, 100 * std::sqrt(1 - std::acos(-1.) / 4), 1e-10);
}

TEST(WeibullFit, ExtremesAreFitted) {
  const struct {
    const char* name;
    std::vector<Life> lives;
  } rows[] = {{"hardly any spread", {{100, true}, {100.01, true}, {100.02, true}}},
              {"all spread", {{1e-3, true}, {1, true}, {1e6, true}}},
              {"tiny times", {{1e-12, true}, {2e-12, true}, {2e-12, false}}},
              {"huge times", {{1e12, true}, {2e12, true}, {2e12, false}}},
              {"entries just before", {{5, true, 4.9}, {7, true, 6.999}, {4, false, 3.9}}}};
  for (const auto& row : rows) {
    const auto fit = fit_weibull(row.lives);
    ASSERT_TRUE(fit) << row.name << ": " << fit.error().message;
    const double scale = std::log(fit->scale), shape = std::log(fit->shape);
    for (const double step : {-1e-3, 1e-3}) {
      EXPECT_LE(log_likelihood(row.lives, scale, shape + step), fit->log_likelihood) << row.name;
      EXPECT_LE(log_likelihood(row.lives, scale + step, shape), fit->log_likelihood) << row.name;
    }
  }
}

TEST(WeibullFit, ManyLivesFewFailuresAreFitted) {
  std::vector<Life> lives(5000, Life{10, false});
  lives[0] = {3, true};
  lives[1] = {8, true};
  const WeibullFit fit = fit_of(lives);
  EXPECT_GT(failed_by(fit, .5).high / failed_by(fit, .5).low, 100) << "nobody knows";
}

// The log-likelihood of a shape with its best scale, from the definition.
double profile(const std::vector<Life>& lives, double shape) {
  double exposure = 0;
  for (const Life& life : lives) {
    exposure += std::pow(life.exit, shape) - std::pow(life.entry.value_or(0), shape);
  }
  const auto failures = static_cast<double>(count_failures(lives));
  return log_likelihood(lives, std::log(exposure / failures) / shape, std::log(shape));
}

TEST(WeibullFit, SmallSamplesAreFittedAtTheHighestPointOrRefusedForHavingNone) {
  std::mt19937_64 random(kSeed);
  int fitted = 0, refused = 0;
  for (int run = 0; run < 3000; ++run) {
    const double size = 2 + run % 7;
    const auto lives = draw_lives(static_cast<std::size_t>(size), {1.2, 12, .8, true}, random);
    if (!check_lives_to_fit(lives)) continue;
    const auto fit = fit_weibull(lives);
    ++(fit ? fitted : refused);
    double highest = profile(lives, .05);
    for (double shape = .06; shape < 200; shape *= 1.2) {
      const double here = profile(lives, shape);
      if (fit) {
        EXPECT_LE(here, fit->log_likelihood + 1e-7) << "run " << run << ", shape " << shape;
      } else {
        EXPECT_LE(here, highest + 1e-7) << "run " << run << ", shape " << shape;
        highest = here;
      }
    }
  }
  EXPECT_GT(fitted, 1000);
  EXPECT_GT(refused, 10);
}

TEST(WeibullFit, BadLivesAreAnError) {
  // Failures soon after a late entry and one life without end: each smaller shape fits better.
  const std::vector<Life> falling{
      {101, true, 100}, {102, true, 100}, {103, true, 100}, {1e6, false, 100}};
  const struct {
    const char* name;
    std::vector<Life> lives;
    std::string message;
  } rows[] = {{"one failure",
               {{3, true}, {4, false}},
               "1 failed: fitting a life needs at least 2 failures"},
              {"all equal", {{3, true}, {3, true}}, "all failures are at 3, the longest life"},
              {"zero", {{0, true}, {3, true}, {4, true}}, "a life to fit must be longer than 0"},
              {"too close to tell",
               {{1, true}, {1 + 1e-12, true}},
               "no Weibull shape from 0.001 to 1000000 fits these lives best"},
              {"falling too fast", falling,
               "no Weibull shape from 0.001 to 1000000 fits these lives best"}};
  for (const auto& row : rows) {
    const auto fit = fit_weibull(row.lives);
    ASSERT_FALSE(fit) << row.name;
    EXPECT_EQ(fit.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(fit.error().message, row.message) << row.name;
  }
}

}  // namespace
}  // namespace shoplore
