// Own repairs that came back: which, how often, how soon, why.
#include "query/watch_out/own_comebacks.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr auto kStayed = OutcomeStatus::kStayedFixed;
constexpr auto kBack = OutcomeStatus::kCameBack;
const std::string kSeal = "plug_well_seal:leaking";
const std::string kCoil = "replace ignition_coil", kSealFix = "replace plug_well_seal";

// Case by case as the index has it: what was done, and why it came back.
PlainCase coil_case(OutcomeStatus outcome, const std::string& reason = {},
                    std::optional<int> days = {}) {
  PlainCase one{kSeal, {{"done:" + kCoil, "present"}}, {}, outcome, {kCoil}};
  if (!reason.empty()) one.items.push_back({"came_back:" + reason, "present"});
  one.came_back_days = days;
  return one;
}

std::vector<PlainCase> seal_shop(int coil_back, int coil_stayed) {
  std::vector<PlainCase> cases;
  add(cases, coil_back, coil_case(kBack, "wrong_cause"));
  add(cases, coil_stayed, coil_case(kStayed));
  add(cases, 1, {kSeal, {}, {}, kBack, {kCoil, kSealFix}});
  add(cases, 13, {kSeal, {}, {}, kStayed, {kCoil, kSealFix}});
  return cases;
}

std::vector<Warning> warned(const WatchShop& shop, double probability = 0.6) {
  return shop.warned(warn_of_own_comebacks, {}, {kSeal}, {}, probability);
}

// 90 % Jeffreys of 9 of 11: R 4.2.2 qbeta(c(.05, .95), 9.5, 2.5) = .581, .946.
TEST(OwnComebacks, AreNamedWithTheFixThatLasted) {
  const auto warnings = warned(WatchShop(seal_shop(9, 2)));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kFixCameBack);
  EXPECT_EQ(warnings[0].about, kCoil);
  EXPECT_EQ(warnings[0].share.count, 9U);
  EXPECT_EQ(warnings[0].share.out_of, 11U);
  EXPECT_THAT(warnings[0].text, HasSubstr("replace ignition coil alone came back 9 of 11 here "
                                          "(90 %: 58 to 95 %)"));
  EXPECT_THAT(warnings[0].text, HasSubstr("replace plug-well seal, 1 of 14"));
  EXPECT_EQ(ids(warnings[0]).size(), 9U);
  EXPECT_EQ(ids(warnings[0]).front(), 9U);
}

TEST(OwnComebacks, SayHowSoonAndWhy) {
  std::vector<PlainCase> cases{
      coil_case(kBack, "wrong_cause", 20), coil_case(kBack, "wrong_cause", 64),
      coil_case(kBack, "part", 90),        coil_case(kBack, "wrong_cause", 300),
      coil_case(kBack, "unsaid"),          coil_case(kStayed)};
  // Another cause's comeback after the same work is not this one's.
  cases.push_back(coil_case(kBack, "part", 1));
  cases.back().cause = "ignition_coil:internal_fault";
  const auto warnings = warned(WatchShop(cases));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text,
              HasSubstr("came back 5 of 6 here (90 %: 51 to 97 %), half of them within 64 days; "
                        "wrong cause 3, part 1"));
  EXPECT_THAT(ids(warnings[0]), ElementsAre(5, 4, 3, 2, 1));
}

TEST(OwnComebacks, WithoutDaysAndReasonsNothingIsSaidOfThem) {
  std::vector<PlainCase> cases;
  add(cases, 5, coil_case(kBack, "unsaid"));
  const auto warnings = warned(WatchShop(cases));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text, Not(HasSubstr("days")));
  EXPECT_THAT(warnings[0].text, Not(HasSubstr(";")));
}

// 0 of 10 proves less than 4 of 80: by their 90 % Jeffreys intervals at most 17 % and 10 % (the
// upper 5 % points of Beta(1/2, 10 1/2) and Beta(4 1/2, 76 1/2)).
TEST(OwnComebacks, TheFixNamedAsLastingIsTheOneBestProved) {
  std::vector<PlainCase> cases = seal_shop(9, 2);
  add(cases, 10, {kSeal, {}, {}, kStayed, {"replace cam_cover_gasket"}});
  add(cases, 4, {kSeal, {}, {}, kBack, {kSealFix}});
  add(cases, 76, {kSeal, {}, {}, kStayed, {kSealFix}});
  const auto warnings = warned(WatchShop(cases));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text, HasSubstr(". Better: replace plug-well seal, 4 of 80"));
}

TEST(OwnComebacks, AFixThatAlsoCameBackOftenIsNotNamedAsLasting) {
  std::vector<PlainCase> cases;
  add(cases, 9, coil_case(kBack, "part"));
  add(cases, 4, {kSeal, {}, {}, kBack, {kSealFix}});
  add(cases, 6, {kSeal, {}, {}, kStayed, {kSealFix}});
  const auto warnings = warned(WatchShop(cases));
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text, Not(HasSubstr("Better")));
}

TEST(OwnComebacks, AShareBelowAThirdOrTooFewOutcomesIsNoWarning) {
  const struct {
    const char* name;
    int back, stayed;
    std::size_t warnings;
  } table[] = {{"a third exactly", 3, 6, 1},
               {"just below a third", 3, 7, 0},
               {"five outcomes", 5, 0, 1},
               {"four outcomes", 4, 0, 0},
               {"never came back", 0, 20, 0}};
  for (const auto& each : table) {
    EXPECT_EQ(warned(WatchShop(seal_shop(each.back, each.stayed))).size(), each.warnings)
        << each.name;
  }
}

TEST(OwnComebacks, AnUnlikelyCausesFixesAreNotWarnedOf) {
  const WatchShop shop(seal_shop(9, 2));
  EXPECT_TRUE(warned(shop, 0.09).empty());
  EXPECT_EQ(warned(shop, 0.1).size(), 1U);
}

}  // namespace
}  // namespace shoplore::testing
