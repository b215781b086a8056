#include "query/lives/log_rank.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/query/lives/life_samples.hpp"

namespace shoplore {
namespace {

using namespace testing;

constexpr std::uint64_t kSeed = 31;
constexpr LifeLaw kTiedAndLate{1.5, 20, .5, true};

LogRank test_of(const std::vector<Life>& first, const std::vector<Life>& second) {
  return log_rank(first, second).value();
}

TEST(LogRank, ByHand) {
  // At 1: one of 2 and 2 fails, expected 1/2, variance 1/4. At 2: one of 1 and 2, expected 1/3,
  // variance 2/9. At 3: both of 0 and 2 fail, expected 0, variance 0.
  const LogRank test = test_of({{1, true}, {2, true}}, {{3, true}, {3, true}});
  EXPECT_EQ(test.first_failed, 2U);
  EXPECT_EQ(test.second_failed, 2U);
  EXPECT_NEAR(test.first_expected, 5. / 6, 1e-12);
  EXPECT_NEAR(test.second_expected, 19. / 6, 1e-12);
  EXPECT_NEAR(test.chi_squared, (7. / 6) * (7. / 6) / (1. / 4 + 2. / 9), 1e-12);
  EXPECT_NEAR(test.p, std::erfc(std::sqrt(test.chi_squared / 2)), 1e-12);
}

TEST(LogRank, OnlyThoseWatchedAtAFailureAreCompared) {
  // At 5, of the second group one was censored there (still at risk), one entered there (not yet).
  const LogRank test = test_of({{5, true}, {9, false}}, {{5, false}, {9, false, 5}});
  EXPECT_NEAR(test.first_expected, 2. / 3, 1e-12);
  EXPECT_NEAR(test.second_expected, 1. / 3, 1e-12);
}

TEST(LogRank, ExpectedAddUpToTheFailed) {
  std::mt19937_64 random(kSeed);
  for (std::size_t size = 5; size < 60; ++size) {
    const LogRank test =
        test_of(draw_lives(size, kTiedAndLate, random), draw_lives(20, kTiedAndLate, random));
    EXPECT_NEAR(test.first_expected + test.second_expected,
                static_cast<double>(test.first_failed + test.second_failed), 1e-9);
  }
}

TEST(LogRank, GroupsMayChangePlacesAndOrder) {
  std::mt19937_64 random(kSeed);
  auto first = draw_lives(40, kTiedAndLate, random), second = draw_lives(30, kTiedAndLate, random);
  const LogRank one = test_of(first, second), other = test_of(second, first);
  EXPECT_NEAR(one.chi_squared, other.chi_squared, 1e-10);
  EXPECT_NEAR(one.first_expected, other.second_expected, 1e-10);
  std::shuffle(first.begin(), first.end(), random);
  EXPECT_DOUBLE_EQ(test_of(first, second).chi_squared, one.chi_squared);
}

TEST(LogRank, OnlyTheOrderOfAgesMatters) {
  std::mt19937_64 random(kSeed);
  auto first = draw_lives(40, kTiedAndLate, random), second = draw_lives(30, kTiedAndLate, random);
  const LogRank before = test_of(first, second);
  for (auto* group : {&first, &second}) {
    for (Life& life : *group) {
      life.exit = life.exit * life.exit;
      if (life.entry) *life.entry *= *life.entry;
    }
  }
  EXPECT_DOUBLE_EQ(test_of(first, second).chi_squared, before.chi_squared);
}

TEST(LogRank, ALifeSeenInTwoStretchesIsOneLife) {
  std::mt19937_64 random(kSeed);
  const auto first = draw_lives(40, {2, 100, .4, false}, random);
  const auto second = draw_lives(40, {2, 150, .4, false}, random);
  EXPECT_NEAR(test_of(split_lives(first, random), second).chi_squared,
              test_of(first, second).chi_squared, 1e-10);
}

TEST(LogRank, AlikeGroupsAreCalledDifferentAsOftenAsPromised) {
  std::mt19937_64 random(kSeed);
  constexpr int kRuns = 1000;
  int called = 0;
  for (int run = 0; run < kRuns; ++run) {
    const auto first = draw_lives(30, kTiedAndLate, random);
    const auto second = draw_lives(40, kTiedAndLate, random);
    called += test_of(first, second).p < .1 ? 1 : 0;
  }
  EXPECT_NEAR(called / double{kRuns}, .1, .04) << "seed " << kSeed;
}

TEST(LogRank, AClearDifferenceIsFound) {
  std::mt19937_64 random(kSeed);
  const LogRank test = test_of(draw_lives(80, {2, 100, .3, false}, random),
                               draw_lives(80, {2, 200, .3, false}, random));
  EXPECT_LT(test.p, 1e-6);
  EXPECT_GT(static_cast<double>(test.first_failed), test.first_expected);
}

TEST(LogRank, NothingToCompareIsAnError) {
  const struct {
    const char* name;
    std::vector<Life> first, second;
    std::string place, message;
  } rows[] = {
      {"none", {}, {{3, true}}, "first", "no lives were given"},
      {"bad second",
       {{3, true}},
       {{4, true}, {3, true, 3}},
       "second life 2",
       "it was seen from 3 but ended at 3: entry must be before exit"},
      {"no failure", {{3, false}}, {{4, false}}, "", "the failures cannot tell the groups apart"},
      {"never both at risk",
       {{3, true}},
       {{9, true, 5}},
       "",
       "the failures cannot tell the groups apart"},
      {"all failed at once",
       {{3, true}},
       {{3, true}},
       "",
       "the failures cannot tell the groups apart"}};
  for (const auto& row : rows) {
    const auto test = log_rank(row.first, row.second);
    ASSERT_FALSE(test) << row.name;
    EXPECT_EQ(test.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(test.error().place, row.place) << row.name;
    EXPECT_EQ(test.error().message, row.message) << row.name;
  }
}

}  // namespace
}  // namespace shoplore
