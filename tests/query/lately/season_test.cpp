#include "query/lately/season.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 20261126;
constexpr auto kFirst = std::chrono::year(2020) / 4;

struct Drawn {
  std::vector<std::uint32_t> counts, cases;
};

// A failure with a wave of that swing, most often in January.
Drawn draw(std::size_t months, double a_month, double swing, std::mt19937_64& random) {
  Drawn drawn;
  for (std::size_t i = 0; i < months; ++i) {
    const double angle = 2 * std::numbers::pi * static_cast<double>((3 + i) % 12) / 12;
    const double mean = a_month * std::exp(swing * std::cos(angle));
    drawn.cases.push_back(200);
    drawn.counts.push_back(std::poisson_distribution<std::uint32_t>(mean)(random));
  }
  return drawn;
}

TEST(Season, AWaveIsFoundWhereThereIsOne) {
  std::mt19937_64 random(kSeed);
  for (int run = 0; run < 50; ++run) {
    const Drawn drawn = draw(48, 4, 0.8, random);
    const SeasonWeights weights = season_of(drawn.counts, drawn.cases, kFirst);
    ASSERT_NE(weights, kNoSeason) << "seed " << kSeed << ", run " << run;
    // True weight of January over that of July: exp(1.6).
    EXPECT_NEAR(std::log(weights[0] / weights[6]), 1.6, 0.8) << run;
  }
}

// Believed by chance in about one of twenty: chi-squared with 2 degrees above 6.
TEST(Season, MostlyNoneIsFoundWhereThereIsNone) {
  std::mt19937_64 random(kSeed);
  int believed = 0;
  for (int run = 0; run < 400; ++run) {
    const Drawn drawn = draw(48, 4, 0, random);
    if (season_of(drawn.counts, drawn.cases, kFirst) != kNoSeason) ++believed;
  }
  EXPECT_LE(believed, 40) << "seed " << kSeed;
}

TEST(Season, WeightsAverageToOne) {
  std::mt19937_64 random(kSeed);
  const Drawn drawn = draw(60, 5, 1, random);
  double sum = 0;
  for (const double weight : season_of(drawn.counts, drawn.cases, kFirst)) sum += weight;
  EXPECT_NEAR(sum, 12, 1e-9);
}

TEST(Season, TooLittleOrNothingHasNone) {
  std::mt19937_64 random(kSeed);
  const Drawn shorter = draw(23, 40, 1, random);
  EXPECT_EQ(season_of(shorter.counts, shorter.cases, kFirst), kNoSeason);
  const std::vector<std::uint32_t> never(36), cases(36, 200);
  EXPECT_EQ(season_of(never, cases, kFirst), kNoSeason);
}

}  // namespace
}  // namespace shoplore
