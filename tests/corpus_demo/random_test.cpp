#include "corpus-demo/random.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

namespace shoplore {
namespace {

// Rosetta Code, "Pseudo-random numbers/Splitmix64": the first five numbers of seed 1234567.
TEST(Random, IsSplitMix64) {
  Random random(1234567);
  EXPECT_EQ(random.next(), 6457827717110365317u);
  EXPECT_EQ(random.next(), 3203168211198807973u);
  EXPECT_EQ(random.next(), 9817491932198370423u);
  EXPECT_EQ(random.next(), 4593380528125082431u);
  EXPECT_EQ(random.next(), 16408922859458223821u);
}

TEST(Random, IntegersStayInsideTheirRangeAndReachBothEnds) {
  Random random(7);
  std::array<int, 3> seen{};
  for (int i = 0; i < 300; ++i) {
    const auto value = random.integer(4, 6);
    ASSERT_TRUE(value >= 4 && value <= 6);
    ++seen[static_cast<std::size_t>(value - 4)];
  }
  EXPECT_GT(*std::min_element(seen.begin(), seen.end()), 0);
}

TEST(Random, NeverPicksAWeightOfZero) {
  Random random(7);
  const std::array<double, 4> weights{0, 2, 0, 0};
  for (int i = 0; i < 1'000; ++i) ASSERT_EQ(random.pick(weights), 1u);
}

TEST(Random, PicksInProportion) {
  Random random(7);
  const std::array<double, 2> weights{1, 3};
  int second = 0;
  for (int i = 0; i < 10'000; ++i) second += random.pick(weights) == 1 ? 1 : 0;
  EXPECT_NEAR(second, 7'500, 5 * 43.3);  // five standard deviations of Binomial(10000, 3/4)
}

}  // namespace
}  // namespace shoplore
