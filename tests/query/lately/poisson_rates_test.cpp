// Exact comparisons of counted events against plain definitions, and their ends.
#include <gtest/gtest.h>

#include <cmath>

#include "query/lately/poisson_rates.hpp"

namespace shoplore {
namespace {

double binomial_probability(int k, int n, double chance) {
  double p = 1;
  for (int i = 0; i < k; ++i) p *= static_cast<double>(n - i) / (i + 1);
  return p * std::pow(chance, k) * std::pow(1 - chance, n - k);
}

// Every outcome no likelier than the one seen, added up.
TEST(PoissonRates, TwoSidedPIsTheSumOfAllThatIsNoLikelier) {
  for (const double chance : {0.01, 0.25, 0.5, 0.9}) {
    for (const int n : {1, 2, 7, 20, 41}) {
      for (int k = 0; k <= n; ++k) {
        const double seen = binomial_probability(k, n, chance);
        double sum = 0;
        for (int j = 0; j <= n; ++j) {
          const double p = binomial_probability(j, n, chance);
          if (p <= seen * (1 + 1e-7)) sum += p;
        }
        EXPECT_NEAR(two_sided_binomial_p(static_cast<std::uint64_t>(k),
                                         static_cast<std::uint64_t>(n), chance),
                    std::min(1.0, sum), 1e-12)
            << k << " of " << n << " at " << chance;
      }
    }
  }
}

TEST(PoissonRates, SwappingTheTwoTurnsTheRatioUpsideDown) {
  const RateRatio one = rate_ratio({12, 3}, {30, 33}, 0.9),
                  other = rate_ratio({30, 33}, {12, 3}, 0.9);
  EXPECT_NEAR(one.ratio * other.ratio, 1, 1e-12);
  EXPECT_NEAR(one.low * other.high, 1, 1e-9);
  EXPECT_NEAR(one.high * other.low, 1, 1e-9);
  EXPECT_NEAR(one.p, other.p, 1e-12);
}

TEST(PoissonRates, EndsAreNamedNotComputed) {
  const RateRatio none = rate_ratio({0, 3}, {0, 33}, 0.9);
  EXPECT_EQ(none.ratio, 1);
  EXPECT_EQ(none.low, 0);
  EXPECT_TRUE(std::isinf(none.high));
  EXPECT_EQ(none.p, 1);
  const RateRatio first_only = rate_ratio({4, 3}, {0, 33}, 0.9);
  EXPECT_TRUE(std::isinf(first_only.ratio));
  EXPECT_TRUE(std::isinf(first_only.high));
  EXPECT_NEAR(first_only.p, std::pow(3.0 / 36, 4), 1e-12);
  const RateRatio second_only = rate_ratio({0, 3}, {4, 33}, 0.9);
  EXPECT_EQ(second_only.ratio, 0);
  EXPECT_EQ(second_only.low, 0);
}

}  // namespace
}  // namespace shoplore
