#include "query/lives/lognormal_fit.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "tests/query/lives/life_samples.hpp"

namespace shoplore {
namespace {

using namespace testing;

constexpr std::uint64_t kSeed = 29;
constexpr double kStep = 1e-3;

LognormalFit fit_of(const std::vector<Life>& lives) {
  return fit_lognormal(lives).value();
}

double log_share_beyond(double time, double mean, double deviation) {
  return std::log(std::erfc((std::log(time) - mean) / deviation / std::numbers::sqrt2) / 2);
}

// Written out life by life: densities of failures, survival of the others, given the entry.
double log_likelihood(const std::vector<Life>& lives, double mean, double log_deviation) {
  const double deviation = std::exp(log_deviation);
  double sum = 0;
  for (const Life& life : lives) {
    const double z = (std::log(life.exit) - mean) / deviation;
    sum += life.failed ? -z * z / 2 - log_deviation - std::log(life.exit) -
                             std::log(2 * std::numbers::pi) / 2
                       : log_share_beyond(life.exit, mean, deviation);
    if (life.entry && *life.entry > 0) sum -= log_share_beyond(*life.entry, mean, deviation);
  }
  return sum;
}

std::vector<std::vector<Life>> samples() {
  std::mt19937_64 random(kSeed);
  std::vector<std::vector<Life>> all;
  for (const double shape : {1.2, 2., 5.}) {
    for (const double late : {0., .6, .9}) {
      all.push_back(draw_lives(60, {shape, 3000, late, false}, random));
      all.push_back(draw_lives(60, {shape, 30, late, true}, random));
    }
  }
  return all;
}

TEST(LognormalFit, NoNeighbourIsMoreLikely) {
  for (const auto& lives : samples()) {
    const LognormalFit fit = fit_of(lives);
    const double mean = fit.log_mean, spread = std::log(fit.log_deviation);
    EXPECT_NEAR(fit.log_likelihood, log_likelihood(lives, mean, spread), 1e-8);
    for (const double size : {1e-3, .1, .5}) {
      for (const double along : {-size, 0., size}) {
        for (const double across : {-size, size}) {
          EXPECT_LT(log_likelihood(lives, mean + along, spread + across), fit.log_likelihood);
          EXPECT_LT(log_likelihood(lives, mean + across, spread + along), fit.log_likelihood);
        }
      }
    }
  }
}

TEST(LognormalFit, CovarianceInvertsTheCurvature) {
  for (const auto& lives : samples()) {
    const LognormalFit fit = fit_of(lives);
    const auto at = [&](double mean_steps, double spread_steps) {
      return log_likelihood(lives, fit.log_mean + mean_steps * kStep,
                            std::log(fit.log_deviation) + spread_steps * kStep);
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

TEST(LognormalFit, OfCompleteLivesIsMeanAndDeviationOfTheirLogarithms) {
  const std::vector<Life> lives{{std::exp(1.), true}, {std::exp(2.), true}, {std::exp(6.), true}};
  const LognormalFit fit = fit_of(lives);
  EXPECT_NEAR(fit.log_mean, 3, 1e-12);
  EXPECT_NEAR(fit.log_deviation, std::sqrt((4. + 1 + 9) / 3), 1e-12);
  EXPECT_NEAR(fit.covariance.first, (4. + 1 + 9) / 3 / 3, 1e-10);
  EXPECT_NEAR(fit.covariance.second, 1 / 6., 1e-10);
  EXPECT_NEAR(fit.covariance.between, 0, 1e-10);
}

TEST(LognormalFit, AnotherUnitOnlyShifts) {
  for (const auto& lives : samples()) {
    std::vector<Life> in_metres = lives;
    for (Life& life : in_metres) {
      life.exit *= 1000;
      if (life.entry) *life.entry *= 1000;
    }
    const LognormalFit km = fit_of(lives), metres = fit_of(in_metres);
    EXPECT_NEAR(metres.log_mean, km.log_mean + std::log(1000), 1e-8);
    EXPECT_NEAR(metres.log_deviation, km.log_deviation, 1e-8 * km.log_deviation);
    EXPECT_NEAR(metres.covariance.first, km.covariance.first, 1e-6 * km.covariance.first);
  }
}

TEST(LognormalFit, ALifeSeenInTwoStretchesIsOneLife) {
  std::mt19937_64 random(kSeed);
  for (const auto& lives : samples()) {
    const LognormalFit whole = fit_of(lives), split = fit_of(split_lives(lives, random));
    EXPECT_NEAR(split.log_mean, whole.log_mean, 1e-8);
    EXPECT_NEAR(split.log_deviation, whole.log_deviation, 1e-8);
    EXPECT_NEAR(split.log_likelihood, whole.log_likelihood, 1e-7);
    EXPECT_NEAR(split.covariance.first, whole.covariance.first, 1e-6 * whole.covariance.first);
  }
}

TEST(LognormalFit, QuantilesRiseAroundTheMedian) {
  const LognormalFit fit = fit_of(samples()[2]);
  const Estimate median = failed_by(fit, .5);
  EXPECT_NEAR(median.value, std::exp(fit.log_mean), 1e-9 * median.value);
  EXPECT_NEAR(median.low, median_of(fit).low, 1e-9 * median.low);
  EXPECT_NEAR(median.high, median_of(fit).high, 1e-9 * median.high);
  double before = 0;
  for (const double share : {.001, .1, .5, .9, .999}) {
    const Estimate age = failed_by(fit, share);
    EXPECT_GT(age.value, before);
    EXPECT_LT(age.low, age.value);
    EXPECT_GT(age.high, age.value);
    EXPECT_NEAR(std::exp(log_share_beyond(age.value, fit.log_mean, fit.log_deviation)), 1 - share,
                1e-10);
    before = age.value;
  }
}

std::vector<Life> draw_lognormal(std::size_t count, std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> uniform;
  std::vector<Life> lives;
  while (lives.size() < count) {
    const double failure = 100 * std::exp(.5 * normal(random)), last = 400 * uniform(random);
    Life life{std::min(failure, last), failure <= last, {}};
    if (uniform(random) < .6) life.entry = 120 * uniform(random);
    if (life.exit > life.entry.value_or(0)) lives.push_back(life);
  }
  return lives;
}

TEST(LognormalFit, FindsTheLawOnlyIfLateEntryIsSaid) {
  std::mt19937_64 random(kSeed);
  std::vector<Life> lives = draw_lognormal(3000, random);
  const LognormalFit honest = fit_of(lives);
  EXPECT_NEAR(honest.log_mean, std::log(100), 4 * std::sqrt(honest.covariance.first));
  EXPECT_NEAR(std::log(honest.log_deviation), std::log(.5),
              4 * std::sqrt(honest.covariance.second));
  for (Life& life : lives) life.entry.reset();
  const LognormalFit naive = fit_of(lives);
  EXPECT_GT(naive.log_mean, std::log(100) + 4 * std::sqrt(naive.covariance.first));
}

TEST(LognormalFit, TheLawThatMadeTheLivesFitsThemBetter) {
  std::mt19937_64 random(kSeed);
  const auto lognormal = draw_lognormal(2000, random);
  const auto weibull = draw_lives(2000, {2, 100, .5, false}, random);
  const FormComparison one = compare_forms(fit_weibull(lognormal).value(), fit_of(lognormal));
  EXPECT_EQ(one.better, LifeForm::kLognormal);
  EXPECT_GT(one.lead, 2);
  const FormComparison other = compare_forms(fit_weibull(weibull).value(), fit_of(weibull));
  EXPECT_EQ(other.better, LifeForm::kWeibull);
  EXPECT_GT(other.lead, 2);
}

TEST(LognormalFit, OfEqualsTheWeibullIsNamed) {
  WeibullFit weibull;
  LognormalFit lognormal;
  weibull.log_likelihood = lognormal.log_likelihood = -5;
  EXPECT_EQ(compare_forms(weibull, lognormal).better, LifeForm::kWeibull);
  EXPECT_EQ(compare_forms(weibull, lognormal).lead, 0);
}

TEST(LognormalFit, ExtremesAreFitted) {
  const struct {
    const char* name;
    std::vector<Life> lives;
  } rows[] = {{"hardly any spread", {{100, true}, {100.01, true}, {100.02, true}}},
              {"two alike, one far", {{100, true}, {100, true}, {100, true}, {1e6, false}}},
              {"all spread", {{1e-3, true}, {1, true}, {1e6, true}}},
              {"tiny times", {{1e-12, true}, {2e-12, true}, {2e-12, false}}}};
  for (const auto& row : rows) {
    const auto fit = fit_lognormal(row.lives);
    ASSERT_TRUE(fit) << row.name;
    const double mean = fit->log_mean, spread = std::log(fit->log_deviation);
    for (const double step : {-1e-3, 1e-3}) {
      EXPECT_LE(log_likelihood(row.lives, mean, spread + step), fit->log_likelihood) << row.name;
      EXPECT_LE(log_likelihood(row.lives, mean + step, spread), fit->log_likelihood) << row.name;
    }
  }
}

TEST(LognormalFit, FewFailuresOfManyAreFitted) {
  std::vector<Life> lives(5000, Life{10, false});
  lives[0] = {3, true};
  lives[1] = {8, true};
  const LognormalFit fit = fit_of(lives);
  EXPECT_EQ(fit.failures, 2U);
  EXPECT_EQ(fit.lives, 5000U);
  EXPECT_GT(failed_by(fit, .5).high / failed_by(fit, .5).low, 100) << "nobody knows";
}

// The highest log-likelihood of a spread over a fine grid of means.
double profile(const std::vector<Life>& lives, double log_deviation) {
  double highest = -std::numeric_limits<double>::infinity();
  const double deviation = std::exp(log_deviation);
  for (double steps = -100; steps <= 60; ++steps) {
    const double here = log_likelihood(lives, 2 + steps * deviation / 10, log_deviation);
    if (std::isfinite(here)) highest = std::max(highest, here);
  }
  return highest;
}

TEST(LognormalFit, SmallSamplesAreFittedAtTheHighestPointOrRefusedForHavingNone) {
  std::mt19937_64 random(kSeed);
  int fitted = 0, refused = 0;
  for (int run = 0; run < 1500; ++run) {
    const double size = 2 + run % 7;
    const auto lives = draw_lives(static_cast<std::size_t>(size), {.9, 12, 1, true}, random);
    if (!check_lives_to_fit(lives)) continue;
    const auto fit = fit_lognormal(lives);
    ++(fit ? fitted : refused);
    double highest = -std::numeric_limits<double>::infinity();
    for (double log_deviation = -3; log_deviation < 2; log_deviation += .5) {
      const double here = profile(lives, log_deviation);
      if (fit) {
        EXPECT_LE(here, fit->log_likelihood + 1e-7) << "run " << run << ", " << log_deviation;
      } else {
        EXPECT_GE(here, highest - .01) << "run " << run << ", " << log_deviation;
        highest = std::max(highest, here);
      }
    }
  }
  EXPECT_GT(fitted, 500);
  EXPECT_GT(refused, 10);
}

TEST(LognormalFit, BadLivesAreAnError) {
  // Failures soon after a late entry and one life without end: each greater spread fits better.
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
              {"falling too fast", falling, "no lognormal spread fits these lives best"}};
  for (const auto& row : rows) {
    const auto fit = fit_lognormal(row.lives);
    ASSERT_FALSE(fit) << row.name;
    EXPECT_EQ(fit.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(fit.error().message, row.message) << row.name;
  }
}

}  // namespace
}  // namespace shoplore
