#include "query/outcomes/stayed_fixed.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/query/outcomes/product_by_hand.hpp"
#include "tests/query/outcomes/visits.hpp"

namespace shoplore {
namespace {

using std::chrono::days;

FixLife life(FixEnd end, std::int64_t lasted) {
  FixLife made;
  made.cause = testing::kLinkage;
  made.fixes = {"replace wastegate_linkage"};
  made.end = end;
  if (end == FixEnd::kNotHeardOf) return made;
  made.heard_from = HeardFrom::kRecordedOutcome;
  made.days = days{lasted};
  made.km = Kilometres{lasted * 40};
  return made;
}

std::vector<FixLife> several(std::size_t count, FixEnd end, std::int64_t lasted) {
  return {count, life(end, lasted)};
}

std::vector<FixLife> operator+(std::vector<FixLife> a, const std::vector<FixLife>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

const StayedShare<days>* at(const StayedFixed& group, days after) {
  for (const auto& share : group.by_days) {
    if (share.after == after) return &share;
  }
  return nullptr;
}

TEST(StayedFixed, IsThePlainShareWhereNothingIsCensored) {
  // 14 known to have lasted beyond two years; 3 came back in the first month, 2 in the eleventh.
  const auto lives = several(14, FixEnd::kStillFixed, 800) + several(3, FixEnd::kCameBack, 20) +
                     several(2, FixEnd::kCameBack, 330);
  const StayedFixed group = stayed_fixed(lives);
  ASSERT_EQ(group.by_days.size(), 3U);
  EXPECT_NEAR(group.by_days[0].share, 16.0 / 19, 1e-12);
  EXPECT_NEAR(group.by_days[1].share, 14.0 / 19, 1e-12);
  EXPECT_NEAR(group.by_days[2].share, 14.0 / 19, 1e-12);
  EXPECT_EQ(group.by_days[1].came_back, 5U);
  EXPECT_EQ(group.by_days[1].still_watched, 14U);
}

TEST(StayedFixed, CountsEachOnlyAsLongAsItWasWatched) {
  // By hand: 10 at risk at day 30, one fails: .9; two are lost sight of at 100; 7 at risk at
  // day 200, one fails: .9 * 6 / 7.
  const auto lives = several(1, FixEnd::kCameBack, 30) + several(2, FixEnd::kStillFixed, 100) +
                     several(1, FixEnd::kCameBack, 200) + several(6, FixEnd::kStillFixed, 400) +
                     several(5, FixEnd::kNotHeardOf, 0);
  const StayedFixed group = stayed_fixed(lives);
  ASSERT_NE(at(group, days{365}), nullptr);
  EXPECT_NEAR(at(group, days{365})->share, 0.9 * 6 / 7, 1e-12);
  EXPECT_EQ(at(group, days{365})->still_watched, 6U);
  EXPECT_EQ(at(group, days{730}), nullptr) << "nobody was watched for two years";
  EXPECT_EQ(group.cases, 15U);
  EXPECT_EQ(group.came_back, 2U);
  EXPECT_EQ(group.still_fixed, 8U);
  EXPECT_EQ(group.not_heard_of, 5U);
}

TEST(StayedFixed, GivesNoShareOfFewerThanFiveDecided) {
  const auto four = several(1, FixEnd::kCameBack, 30) + several(3, FixEnd::kStillFixed, 800) +
                    several(9, FixEnd::kStillFixed, 60);
  EXPECT_TRUE(stayed_fixed(four).by_days.empty());
  const auto five = four + several(1, FixEnd::kStillFixed, 90);
  EXPECT_EQ(stayed_fixed(five).by_days.size(), 1U);
}

TEST(StayedFixed, AllThatCameBackIsAShareToo) {
  const StayedFixed group = stayed_fixed(several(7, FixEnd::kCameBack, 40));
  ASSERT_EQ(group.by_days.size(), 3U);
  EXPECT_EQ(group.by_days[2].share, 0);
  EXPECT_EQ(group.by_days[2].still_watched, 0U);
  EXPECT_EQ(group.by_days[2].interval, jeffreys(0, 7));
}

TEST(StayedFixed, ThatNoneCameBackHasAnIntervalOfThoseWatched) {
  const auto lives = several(6, FixEnd::kStillFixed, 100) + several(5, FixEnd::kStillFixed, 365);
  const StayedFixed group = stayed_fixed(lives);
  ASSERT_NE(at(group, days{365}), nullptr);
  EXPECT_EQ(at(group, days{365})->share, 1);
  EXPECT_EQ(at(group, days{365})->interval, jeffreys(5, 5));
  EXPECT_EQ(at(group, days{90})->interval, jeffreys(11, 11));
}

TEST(StayedFixed, ByDistanceNeedsTheOdometerOfBothKinds) {
  auto lives = several(4, FixEnd::kCameBack, 100) + several(8, FixEnd::kStillFixed, 300);
  ASSERT_EQ(stayed_fixed(lives).by_km.size(), 1U) << "12,000 km were watched, not 20,000";
  EXPECT_NEAR(stayed_fixed(lives).by_km[0].share, 8.0 / 12, 1e-12);
  for (std::size_t i = 4; i < 6; ++i) lives[i].km.reset();
  EXPECT_EQ(stayed_fixed(lives).by_km.size(), 1U) << "6 of 8 lasting ones have km";
  lives[6].km.reset();
  EXPECT_TRUE(stayed_fixed(lives).by_km.empty()) << "5 of 8 lasting ones have km";
}

TEST(StayedFixed, CountsReasonsAndWhatNobodyWroteDown) {
  auto lives = several(4, FixEnd::kCameBack, 100) + several(2, FixEnd::kStillFixed, 100);
  lives[0].reason = lives[1].reason = ComebackReason::kPart;
  lives[2].reason = ComebackReason::kWorkmanship;
  lives[3].days.reset();
  lives[4].heard_from = HeardFrom::kLaterVisit;
  const StayedFixed group = stayed_fixed(lives);
  ASSERT_EQ(group.reasons.size(), 3U);
  EXPECT_EQ(group.reasons[0].reason, ComebackReason::kPart);
  EXPECT_EQ(group.reasons[0].cases, 2U);
  EXPECT_EQ(group.reasons[1].reason, std::nullopt);
  EXPECT_EQ(group.reasons[2].reason, ComebackReason::kWorkmanship);
  EXPECT_EQ(group.no_day, 1U);
  EXPECT_EQ(group.seen_by_later_visits, 1U);
}

TEST(StayedFixed, StandsByWhatWasDoneTogether) {
  auto lives = several(2, FixEnd::kStillFixed, 100) + several(4, FixEnd::kCameBack, 100);
  for (std::size_t i = 2; i < 5; ++i) lives[i].fixes = {"replace turbocharger"};
  lives[5].cause = testing::kTurbo;
  const auto groups = stayed_fixed_by_fixes(lives, testing::kLinkage);
  ASSERT_EQ(groups.size(), 2U);
  EXPECT_EQ(groups[0].fixes, std::vector<std::string>{"replace turbocharger"});
  EXPECT_EQ(groups[0].cases, 3U);
  EXPECT_EQ(groups[1].fixes, std::vector<std::string>{"replace wastegate_linkage"});
  EXPECT_EQ(groups[1].cases, 2U);
  EXPECT_TRUE(stayed_fixed_by_fixes(lives, "nothing:known").empty());
}

TEST(StayedFixed, EqualsTheProductOverDaysOnRandomShops) {
  constexpr std::uint64_t kSeed = 20261126;
  std::mt19937_64 random(kSeed);
  std::size_t shares = 0;
  for (int shop = 0; shop < 300; ++shop) {
    std::vector<FixLife> lives;
    const std::size_t count = 1 + random() % 30;
    for (std::size_t i = 0; i < count; ++i) {
      const auto kind = random() % 4;
      const auto lasted = static_cast<std::int64_t>(random() % (kind == 0 ? 200 : 900));
      lives.push_back(kind == 0   ? life(FixEnd::kCameBack, lasted)
                      : kind == 1 ? life(FixEnd::kNotHeardOf, 0)
                                  : life(FixEnd::kStillFixed, lasted));
    }
    for (const auto& share : stayed_fixed(lives).by_days) {
      ++shares;
      EXPECT_NEAR(share.share, testing::share_by_hand(lives, share.after), 1e-12)
          << "seed " << kSeed << ", shop " << shop << ", " << share.after.count() << " days";
      EXPECT_LE(share.interval.low, share.share + 1e-12);
      EXPECT_GE(share.interval.high, share.share - 1e-12);
    }
  }
  EXPECT_GT(shares, 300U);
}

TEST(StayedFixed, DoesNotDependOnTheOrderOfTheLives) {
  auto lives = several(3, FixEnd::kCameBack, 50) + several(9, FixEnd::kStillFixed, 380);
  const StayedFixed forward = stayed_fixed(lives);
  std::reverse(lives.begin(), lives.end());
  const StayedFixed backward = stayed_fixed(lives);
  ASSERT_EQ(forward.by_days.size(), backward.by_days.size());
  for (std::size_t i = 0; i < forward.by_days.size(); ++i) {
    EXPECT_EQ(forward.by_days[i].share, backward.by_days[i].share);
  }
}

TEST(RepeatComebacks, AreThoseOfOneVehicle) {
  // One vehicle back twice within 100 days, one watched for three years and never back.
  auto lives = several(2, FixEnd::kCameBack, 50) + several(1, FixEnd::kStillFixed, 700) +
               several(1, FixEnd::kStillFixed, 1'100);
  const Date first = testing::day("2024-01-01");
  lives[0].vehicle = lives[1].vehicle = lives[2].vehicle = "a";
  lives[0].done = first;
  lives[1].done = {first.days + days{50}};
  lives[2].done = {first.days + days{100}};
  lives[3].vehicle = "b";
  lives[3].done = first;
  const RepeatComebacks repeats = repeat_comebacks(lives);
  EXPECT_EQ(repeats.vehicles, 2U);
  EXPECT_EQ(repeats.comebacks, 2U);
  EXPECT_EQ(repeats.more_than_once, 1U);
  ASSERT_TRUE(repeats.by_then);
  EXPECT_NEAR(repeats.by_then->value, 1, 1e-12) << "two comebacks of two vehicles watched";
}

TEST(RepeatComebacks, OfNobodyWatchedAreNone) {
  const RepeatComebacks none = repeat_comebacks(several(3, FixEnd::kNotHeardOf, 0));
  EXPECT_EQ(none.vehicles, 0U);
  EXPECT_FALSE(none.by_then);
  // Without a token each is a vehicle of its own.
  EXPECT_EQ(repeat_comebacks(several(3, FixEnd::kCameBack, 10)).vehicles, 3U);
}

}  // namespace
}  // namespace shoplore
