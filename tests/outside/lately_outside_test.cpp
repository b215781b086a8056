// Rates of counted events and cumulative sums against published figures and independent
// computations.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "query/lately/cusum.hpp"
#include "query/lately/poisson_rates.hpp"

namespace shoplore {
namespace {

// R 4.2, help of poisson.test: Welsh nickel workers (package ISwR), 137 deaths where 24.19893 were
// to be expected.
TEST(LatelyOutside, MeanIntervalIsThatOfTheNickelWorkers) {
  constexpr double kExpected = 24.19893;
  const Interval interval = poisson_mean_interval(137, 0.95);
  EXPECT_NEAR(interval.low / kExpected, 4.753125, 5.1e-7);
  EXPECT_NEAR(interval.high / kExpected, 6.692709, 5.1e-7);
}

// Formula of F. Garwood, Biometrika 28 (1936) 437-442; figures recomputed with scipy.
TEST(LatelyOutside, MeanIntervalIsGarwoods) {
  const Interval ten = poisson_mean_interval(10, 0.95);
  EXPECT_NEAR(ten.low, 4.7953887, 5.1e-8);
  EXPECT_NEAR(ten.high, 18.3903560, 5.1e-8);
  const Interval none = poisson_mean_interval(0, 0.95);
  EXPECT_EQ(none.low, 0);
  EXPECT_NEAR(none.high, 3.6888795, 5.1e-8);
}

// R 4.2, help of poisson.test: E. B. Andersen, J. Amer. Statist. Assoc. 72 (1977), lung cancer in
// two Danish towns; the eighth digits of p recomputed.
TEST(LatelyOutside, RatioIsThatOfTheDanishTowns) {
  const RateRatio ratio = rate_ratio({11, 800}, {21, 3011}, 0.95);
  EXPECT_NEAR(ratio.ratio, 1.971488, 5.1e-7);
  EXPECT_NEAR(ratio.low, 0.8584264, 5.1e-8);
  EXPECT_NEAR(ratio.high, 4.2772659, 5.1e-8);
  EXPECT_NEAR(ratio.p, 0.0796686330, 5.1e-11);
}

// Counts of J. D. Boice & R. R. Monson, J. Natl Cancer Inst. 59 (1977) 823-832, breast cancer after
// fluoroscopy; person-years as remembered from Rothman's textbook; figures recomputed.
TEST(LatelyOutside, RatioIsThatOfTheFluoroscopyCohort) {
  const RateRatio ratio = rate_ratio({41, 28010}, {15, 19017}, 0.95);
  EXPECT_NEAR(ratio.ratio, 1.8557587, 5.1e-8);
  EXPECT_NEAR(ratio.low, 1.0056841, 5.1e-8);
  EXPECT_NEAR(ratio.high, 3.6093003, 5.1e-8);
  EXPECT_NEAR(ratio.p, 0.0408520, 5.1e-8);
}

// Recomputed; counts as remembered from Gu et al. 2008.
TEST(LatelyOutside, RatioOfSixtyToThirtyMeetsRecomputedDigits) {
  const RateRatio ratio = rate_ratio({60, 51477.5}, {30, 54308.7}, 0.95);
  EXPECT_NEAR(ratio.ratio, 2.1099976, 5.1e-8);
  EXPECT_NEAR(ratio.low, 1.3397357, 5.1e-8);
  EXPECT_NEAR(ratio.high, 3.3883656, 5.1e-8);
  EXPECT_NEAR(ratio.p, 0.00067518, 5.1e-9);
}

// D. C. Montgomery, Introduction to Statistical Quality Control, tables 9.1 and 9.2: mean 10,
// standard deviation 1, K = 1/2, H = 5.
const std::vector<double> kMontgomery{9.45,  7.99,  9.29,  11.66, 12.16, 10.18, 8.04,  11.46,
                                      9.2,   10.34, 9.03,  11.47, 10.51, 9.4,   10.08, 9.37,
                                      10.62, 10.31, 8.52,  10.84, 10.9,  9.33,  12.29, 11.5,
                                      10.6,  11.08, 10.38, 11.62, 11.31, 10.52};

void expect_sums(const std::vector<double>& sums, const std::vector<double>& expected) {
  ASSERT_EQ(sums.size(), expected.size());
  for (std::size_t i = 0; i < sums.size(); ++i) {
    EXPECT_NEAR(sums[i], expected[i], 1e-9) << "observation " << i + 1;
  }
}

TEST(LatelyOutside, SumsAreMontgomerysAndSignalAtTheTwentyNinth) {
  const std::vector<double> references(kMontgomery.size(), 10.5);
  const std::vector<double> sums = upper_cusum(kMontgomery, references);
  expect_sums(sums,
              {0, 0,    0, 1.16, 2.82, 2.50, 0.04, 1.00, 0,    0,    0,    0.97, 0.98, 0,    0,
               0, 0.12, 0, 0,    0.34, 0.74, 0,    1.79, 2.79, 2.89, 3.47, 3.35, 4.47, 5.28, 5.30});
  for (std::size_t i = 0; i < sums.size(); ++i) EXPECT_EQ(sums[i] >= 5, i >= 28) << i;
  // Between the 22nd and the 23rd: N+ = 7 at the 29th.
  EXPECT_EQ(rise_began(std::span(sums).first(29)), 22U);
}

TEST(LatelyOutside, SumsOfAFallAreMontgomerys) {
  std::vector<double> turned;
  for (const double x : kMontgomery) turned.push_back(-x);
  const std::vector<double> references(turned.size(), -9.5);
  std::vector<double> sums = upper_cusum(turned, references);
  sums.resize(22);
  expect_sums(sums, {0.05, 1.56, 1.77, 0, 0,    0, 1.46, 0,    0.30, 0, 0.47,
                     0,    0,    0.10, 0, 0.13, 0, 0,    0.98, 0,    0, 0.17});
}

// J. M. Lucas, Technometrics 27 (1985) 129-144, formula as remembered; figures recomputed.
TEST(LatelyOutside, ReferenceIsLucass) {
  EXPECT_NEAR(poisson_reference(4, 7), 5.3608209, 5.1e-8);
  EXPECT_NEAR(poisson_reference(2, 4), 2.8853901, 5.1e-8);
}

}  // namespace
}  // namespace shoplore
