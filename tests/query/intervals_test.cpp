#include "query/intervals.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace shoplore {
namespace {

constexpr double kEnough = 0.9;

TEST(Intervals, NothingTriedIsAnythingPossible) {
  EXPECT_EQ(jeffreys(0, 0), (Interval{0, 1}));
  EXPECT_EQ(wilson(0, 0, kEnough), (Interval{0, 1}));
  EXPECT_EQ(clopper_pearson(0, 0, kEnough), (Interval{0, 1}));
}

TEST(Intervals, EndsAreClosed) {
  for (std::uint64_t n : {1U, 2U, 19U, 1'000'000U}) {
    for (const auto method : {jeffreys, wilson, clopper_pearson}) {
      EXPECT_EQ(method(0, n, kEnough).low, 0) << n;
      EXPECT_LT(method(0, n, kEnough).high, 1) << n;
      EXPECT_EQ(method(n, n, kEnough).high, 1) << n;
      EXPECT_GT(method(n, n, kEnough).low, 0) << n;
    }
  }
}

TEST(Intervals, EveryIntervalHoldsItsShare) {
  for (std::uint64_t n = 1; n <= 40; ++n) {
    for (std::uint64_t x = 0; x <= n; ++x) {
      const double share = static_cast<double>(x) / static_cast<double>(n);
      for (const auto method : {jeffreys, wilson, clopper_pearson}) {
        const Interval interval = method(x, n, kEnough);
        EXPECT_LE(0, interval.low);
        EXPECT_LE(interval.low, share) << x << "/" << n;
        EXPECT_LE(share, interval.high) << x << "/" << n;
        EXPECT_LE(interval.high, 1);
      }
    }
  }
}

TEST(Intervals, SuccessesAndFailuresAreMirrored) {
  for (std::uint64_t x = 0; x <= 19; ++x) {
    for (const auto method : {jeffreys, wilson, clopper_pearson}) {
      const Interval one = method(x, 19, kEnough);
      const Interval other = method(19 - x, 19, kEnough);
      EXPECT_NEAR(one.low, 1 - other.high, 1e-12) << x;
      EXPECT_NEAR(one.high, 1 - other.low, 1e-12) << x;
    }
  }
}

TEST(Intervals, MoreConfidenceIsWider) {
  const Interval narrow = jeffreys(14, 19, 0.5);
  const Interval shown = jeffreys(14, 19);
  const Interval wide = jeffreys(14, 19, 0.99);
  EXPECT_EQ(shown, jeffreys(14, 19, 0.90));
  EXPECT_LT(wide.low, shown.low);
  EXPECT_LT(shown.low, narrow.low);
  EXPECT_GT(wide.high, shown.high);
  EXPECT_GT(shown.high, narrow.high);
}

TEST(Intervals, JeffreysCoversItsConfidenceOnAverage) {
  // Averaged over shares drawn from Beta(1/2, 1/2) an equal-tailed posterior interval covers
  // exactly its confidence; over evenly spread shares, nearly (Brown, Cai & DasGupta 2001).
  const std::uint64_t n = 20;
  double covered = 0;
  const int steps = 2000;
  for (int step = 0; step < steps; ++step) {
    const double share = (step + 0.5) / steps;
    double mass = std::pow(1 - share, static_cast<double>(n));  // of x = 0
    for (std::uint64_t x = 0; x <= n; ++x) {
      const Interval interval = jeffreys(x, n);
      if (interval.low <= share && share <= interval.high) covered += mass;
      mass *= static_cast<double>(n - x) / static_cast<double>(x + 1) * share / (1 - share);
    }
  }
  EXPECT_NEAR(covered / steps, 0.90, 0.02);
}

TEST(Intervals, LargeCountsStayFinite) {
  const Interval interval = jeffreys(400'000, 1'000'000);
  EXPECT_NEAR(interval.low, 0.3992, 0.0001);
  EXPECT_NEAR(interval.high, 0.4008, 0.0001);
}

}  // namespace
}  // namespace shoplore
