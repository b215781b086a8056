#include "query/patterns/false_discovery.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <random>

namespace shoplore {
namespace {

using Adjust = std::vector<double> (*)(const std::vector<double>&, std::uint64_t);

std::vector<double> drawn(std::mt19937_64& random, std::size_t count) {
  std::uniform_real_distribution<double> any(0, 1);
  std::vector<double> p(count);
  for (double& each : p) each = random() % 4 == 0 ? any(random) * 1e-4 : any(random);
  return p;
}

class FalseDiscovery : public ::testing::TestWithParam<Adjust> {
 protected:
  static constexpr std::uint64_t kSeed = 11;
  void SetUp() override { std::cout << "seed " << kSeed << "\n"; }
  std::mt19937_64 random_{kSeed};
};

TEST_P(FalseDiscovery, NeverBelowPNorAboveOneAndInTheOrderOfP) {
  for (int round = 0; round < 100; ++round) {
    const auto p = drawn(random_, 40);
    const auto adjusted = GetParam()(p, 100);
    for (std::size_t a = 0; a < p.size(); ++a) {
      EXPECT_GE(adjusted[a], p[a]);
      EXPECT_LE(adjusted[a], 1);
      for (std::size_t b = 0; b < p.size(); ++b) {
        if (p[a] < p[b]) {
          EXPECT_LE(adjusted[a], adjusted[b]);
        }
      }
    }
  }
}

TEST_P(FalseDiscovery, WhatIsNotListedCountsAsOne) {
  auto p = drawn(random_, 30);
  const auto few = GetParam()(p, 200);
  p.resize(200, 1.0);
  const auto all = GetParam()(p, 200);
  for (std::size_t i = 0; i < few.size(); ++i) EXPECT_NEAR(few[i], all[i], 1e-12);
}

TEST_P(FalseDiscovery, OneTestIsLeftAlone) {
  EXPECT_EQ(GetParam()({0.03}, 1), std::vector<double>{0.03});
  EXPECT_TRUE(GetParam()({}, 5).empty());
}

INSTANTIATE_TEST_SUITE_P(BothWays, FalseDiscovery, ::testing::Values(&benjamini_hochberg, &holm));

// Every p is chance: with q <= .05 taken, anything at all is found in about one of twenty rounds.
TEST(FalseDiscoveryOfNothing, FindsAnythingInFewRounds) {
  constexpr std::uint64_t kSeed = 5;
  std::cout << "seed " << kSeed << "\n";
  std::mt19937_64 random(kSeed);
  std::uniform_real_distribution<double> any(0, 1);
  int rounds_with_any = 0;
  constexpr int kRounds = 4'000;
  for (int round = 0; round < kRounds; ++round) {
    std::vector<double> p(50);
    for (double& each : p) each = any(random);
    const auto q = benjamini_hochberg(p, p.size());
    rounds_with_any += std::any_of(q.begin(), q.end(), [](double each) { return each <= 0.05; });
  }
  // Standard deviation of the count: 13.8.
  EXPECT_NEAR(rounds_with_any, 0.05 * kRounds, 4 * 13.8);
}

}  // namespace
}  // namespace shoplore
