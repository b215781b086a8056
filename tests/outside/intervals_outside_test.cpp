// Binomial intervals against published tables and independent computations.
//
// Published figures are met to half a unit of their last digit, recomputed ones (scipy 1.10,
// statsmodels 0.13, R 4.2) to the digits given.
#include <gtest/gtest.h>

#include "query/intervals.hpp"

namespace shoplore {
namespace {

struct Row {
  std::uint64_t x, n;
  double low, high;
};

using Method = Interval (*)(std::uint64_t, std::uint64_t, double);

void expect_rows(Method method, double tolerance, std::initializer_list<Row> rows) {
  for (const Row& row : rows) {
    const Interval got = method(row.x, row.n, 0.95);
    EXPECT_NEAR(got.low, row.low, tolerance) << row.x << "/" << row.n;
    EXPECT_NEAR(got.high, row.high, tolerance) << row.x << "/" << row.n;
  }
}

// R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in
// Medicine 17 (1998) 857-872, Table I, method 3.
TEST(IntervalsOutside, WilsonIsNewcombesTable) {
  expect_rows(wilson, 0.00005,
              {{81, 263, 0.2553, 0.3662},
               {15, 148, 0.0624, 0.1605},
               {0, 20, 0.0000, 0.1611},
               {1, 29, 0.0061, 0.1718}});
}

TEST(IntervalsOutside, WilsonMeetsRecomputedDigits) {
  expect_rows(wilson, 5.1e-7,
              {{81, 263, 0.255289, 0.366210},
               {15, 148, 0.062386, 0.160487},
               {0, 20, 0, 0.161125},
               {1, 29, 0.006113, 0.171755}});
}

// The same table, method 5.
TEST(IntervalsOutside, ClopperPearsonIsNewcombesTable) {
  expect_rows(clopper_pearson, 0.00005,
              {{81, 263, 0.2527, 0.3676},
               {15, 148, 0.0578, 0.1617},
               {0, 20, 0.0000, 0.1684},
               {1, 29, 0.0009, 0.1776}});
}

TEST(IntervalsOutside, ClopperPearsonMeetsRecomputedDigits) {
  expect_rows(clopper_pearson, 5.1e-7,
              {{81, 263, 0.252737, 0.367622},
               {15, 148, 0.057844, 0.161650},
               {0, 20, 0, 0.168433},
               {1, 29, 0.000873, 0.177644}});
}

// Formula of L. D. Brown, T. T. Cai and A. DasGupta, Statistical Science 16 (2001) 101-133, sec.
// 3.1.3; figures recomputed with scipy. Their closed end points: 0 at x = 0 and 1 at x = n.
TEST(IntervalsOutside, JeffreysIsTheBetaQuantilesWithClosedEnds) {
  expect_rows(jeffreys, 5.1e-7,
              {{81, 263, 0.254522, 0.365647},
               {15, 148, 0.060449, 0.157643},
               {0, 20, 0, 0.1166390},
               {1, 29, 0.0037462, 0.1500777},
               {5, 10, 0.223529, 0.776471},
               {10, 10, 0.782804, 1}});
}

// The same paper, Table 5, n = 7, as remembered and recomputed, where its modification for the
// ends does not apply.
TEST(IntervalsOutside, JeffreysOfSevenIsBrownCaiAndDasGuptas) {
  expect_rows(jeffreys, 5.1e-7, {{2, 7, 0.064728, 0.647662}, {3, 7, 0.138864, 0.765499}});
}

// scipy.stats.beta.ppf and .cdf.
TEST(IntervalsOutside, BetaQuantilesAreScipys) {
  const struct {
    double p, a, b, x;
  } rows[] = {{0.025, 81.5, 182.5, 0.2545219350}, {0.975, 81.5, 182.5, 0.3656474992},
              {0.975, 0.5, 20.5, 0.1166389829},   {0.025, 1.5, 28.5, 0.0037461736},
              {0.5, 1.5, 28.5, 0.0403159773},     {0.975, 1.5, 28.5, 0.1500776860},
              {0.95, 5, 16, 0.4010281173},        {0.05, 4, 17, 0.0713538843}};
  for (const auto& row : rows) {
    EXPECT_NEAR(beta_quantile(row.p, row.a, row.b), row.x, 1e-6 * row.x)
        << row.p << " of Beta(" << row.a << ", " << row.b << ")";
  }
}

TEST(IntervalsOutside, BetaQuantilesInvertKnownProbabilities) {
  EXPECT_NEAR(beta_quantile(0.3483, 2, 3), 0.3, 1e-9);  // 6x^2 - 8x^3 + 3x^4, exact
  EXPECT_NEAR(beta_quantile(0.5, 0.5, 0.5), 0.5, 1e-12);
  EXPECT_NEAR(beta_quantile(0.891148571488367, 1.5, 28.5), 0.1, 1e-9);
}

// Recomputed with statsmodels.
TEST(IntervalsOutside, EndsAndMiddleMeetRecomputedDigits) {
  expect_rows(wilson, 5.1e-7,
              {{0, 7, 0, 0.354330}, {10, 10, 0.722467, 1}, {5, 10, 0.236593, 0.763407}});
  expect_rows(clopper_pearson, 5.1e-7,
              {{0, 7, 0, 0.409616}, {10, 10, 0.691503, 1}, {5, 10, 0.187086, 0.812914}});
}

}  // namespace
}  // namespace shoplore
