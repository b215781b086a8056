// Chances of a cumulative sum when nothing has changed, against drawing it many times.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "query/lately/cusum.hpp"

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 20261126;

TEST(Cusum, ChancesAreThoseOfSumsDrawnWithUnsureMeans) {
  const std::vector<double> means{3, 3.5, 2.5, 3, 4, 3, 2, 3, 3, 3.5, 3, 3};
  constexpr double kEvents = 60;
  constexpr int kDraws = 200'000;
  const CusumChances chances(means, kEvents, poisson_reference(1, 2.5), 40);
  std::mt19937_64 random(kSeed);
  std::normal_distribution<double> normal(0, 1 / std::sqrt(kEvents));
  std::vector<int> at_least(20);
  for (int draw = 0; draw < kDraws; ++draw) {
    const double times = std::exp(normal(random));
    std::vector<double> counts;
    for (const double mean : means) {
      counts.push_back(std::poisson_distribution<int>(mean * times)(random));
    }
    const double last = upper_cusum(counts, chances.references()).back();
    for (std::size_t sum = 0; sum < at_least.size(); ++sum) {
      if (last >= static_cast<double>(sum)) ++at_least[sum];
    }
  }
  for (std::size_t sum = 0; sum < at_least.size(); ++sum) {
    const double share = static_cast<double>(at_least[sum]) / kDraws;
    const double error = std::sqrt(share * (1 - share) / kDraws);
    // The rule of five points is not the lognormal itself: a tenth of the chance at most.
    EXPECT_NEAR(chances.at_least(static_cast<double>(sum)), share, 4 * error + 0.1 * share + 2e-5)
        << "seed " << kSeed << ", sum " << sum;
  }
}

TEST(Cusum, TheIntervalIsTheSmallestSumWithThatChance) {
  const std::vector<double> means(12, 2);
  const CusumChances chances(means, 50, poisson_reference(1, 2.5), 40);
  for (const double chance : {0.1, 0.01, 0.001, 1e-5}) {
    const double interval = chances.interval(chance);
    EXPECT_LE(chances.at_least(interval), chance);
    EXPECT_GT(chances.at_least(interval - 1.0 / kCusumSteps), chance);
  }
}

TEST(Cusum, ALowerChanceOrSurerMeansMoveTheInterval) {
  const std::vector<double> means(12, 2);
  const CusumChances sure(means, 1'000, 1.6, 60), unsure(means, 10, 1.6, 60);
  EXPECT_LT(sure.interval(1e-3), sure.interval(1e-5));
  EXPECT_LT(sure.interval(1e-3), unsure.interval(1e-3));
}

// What even the highest sum reckoned with is likelier than never signals.
TEST(Cusum, AnIntervalOutOfReachIsInfinite) {
  const std::vector<double> means(12, 2);
  const CusumChances chances(means, 10, 1.6, 3);
  EXPECT_TRUE(std::isinf(chances.interval(1e-9)));
  EXPECT_EQ(chances.at_least(chances.interval(1e-9)), 0);
}

TEST(Cusum, TheRiseBeganAfterTheLastZero) {
  EXPECT_EQ(rise_began(std::vector<double>{0, 2, 0, 1, 3}), 3U);
  EXPECT_EQ(rise_began(std::vector<double>{1, 2}), 0U);
  EXPECT_EQ(rise_began(std::vector<double>{1, 0}), 2U);
}

}  // namespace
}  // namespace shoplore
