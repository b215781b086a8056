#include "query/patterns/exact_tests.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace shoplore {
namespace {

// Pascal's triangle: whole numbers, exact in a double up to 50 rows.
double choose(std::uint32_t of, std::uint32_t take) {
  if (take > of) return 0;
  double value = 1;
  for (std::uint32_t i = 1; i <= take; ++i) value = value * (of - take + i) / i;
  return std::round(value);
}

// The tail added up table by table.
double plainly(const DiagnosticTable& table) {
  const std::uint32_t positive = table.true_positive + table.false_positive;
  const std::uint32_t with = table.with_condition(), cases = table.cases();
  double sum = 0;
  for (std::uint32_t x = table.true_positive; x <= std::min(positive, with); ++x) {
    sum += choose(with, x) * choose(cases - with, positive - x);
  }
  return sum / choose(cases, positive);
}

TEST(ExactTests, EveryTableOfFourteenCasesAgreesWithTheSum) {
  const ExactTests exact(14);
  for (std::uint32_t a = 0; a <= 14; ++a) {
    for (std::uint32_t b = 0; a + b <= 14; ++b) {
      for (std::uint32_t c = 0; a + b + c <= 14; ++c) {
        const DiagnosticTable table{a, b, c, 14 - a - b - c};
        ASSERT_NEAR(exact.fisher_more(table), plainly(table), 1e-12) << a << " " << b << " " << c;
      }
    }
  }
}

TEST(ExactTests, MoreAndFewerOverlapInTheTableItself) {
  const ExactTests exact(400);
  for (std::uint32_t a = 1; a < 60; a += 7) {
    const DiagnosticTable table{a, 60 - a, 90 - a, 250 + a};
    const DiagnosticTable columns_exchanged{60 - a, a, 250 + a, 90 - a};
    const DiagnosticTable one_more{a + 1, 59 - a, 89 - a, 251 + a};
    const double more = exact.fisher_more(table), fewer = exact.fisher_more(columns_exchanged);
    EXPECT_NEAR(more + fewer, 1 + more - exact.fisher_more(one_more), 1e-10) << a;
  }
}

// A tail that begins where single probabilities are too small for a double.
TEST(ExactTests, FarBelowTheMiddleTheTailIsNearlyOne) {
  EXPECT_NEAR(ExactTests(1'000'000).fisher_more({1, 499'999, 499'999, 1}), 1, 1e-12);
}

TEST(ExactTests, FarAboveTheMiddleItIsNothingAndNotLess) {
  const double p = ExactTests(1'000'000).fisher_more({400'000, 100'000, 100'000, 400'000});
  EXPECT_GE(p, 0);
  EXPECT_LT(p, 1e-300);
}

TEST(ExactTests, AMarginOfNothingTellsNothing) {
  const ExactTests exact(20);
  for (const DiagnosticTable& table :
       {DiagnosticTable{0, 0, 5, 15}, DiagnosticTable{0, 5, 0, 15}, DiagnosticTable{5, 0, 15, 0},
        DiagnosticTable{5, 15, 0, 0}, DiagnosticTable{}}) {
    EXPECT_EQ(exact.fisher_more(table), 1);
  }
}

// Of ten throws of a coin: 1, 11, 56 of 1,024 come out at least 10, 9, 8 times.
TEST(ExactTests, ThrowsOfACoin) {
  const ExactTests exact(10);
  EXPECT_NEAR(exact.binomial_more(10, 10, 0.5), 1.0 / 1024, 1e-15);
  EXPECT_NEAR(exact.binomial_more(9, 10, 0.5), 11.0 / 1024, 1e-15);
  EXPECT_NEAR(exact.binomial_more(8, 10, 0.5), 56.0 / 1024, 1e-15);
  EXPECT_NEAR(exact.binomial_more(3, 10, 0.5), 968.0 / 1024, 1e-14);
  EXPECT_EQ(exact.binomial_more(0, 10, 0.5), 1);
}

TEST(ExactTests, EveryBinomialTailAgreesWithTheSum) {
  const ExactTests exact(30);
  for (const double rate : {0.1, 0.5, 0.83}) {
    double sum = 0;
    for (std::uint32_t count = 30; count > 0; --count) {
      sum += choose(30, count) * std::pow(rate, count) * std::pow(1 - rate, 30 - count);
      ASSERT_NEAR(exact.binomial_more(count, 30, rate), sum, 1e-12) << count << " " << rate;
    }
  }
}

}  // namespace
}  // namespace shoplore
