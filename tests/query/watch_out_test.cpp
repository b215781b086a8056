// The warnings, their counts and when they stay silent.
#include "query/watch_out.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "query/fix_counts.hpp"
#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

constexpr auto kStayed = OutcomeStatus::kStayedFixed;
constexpr auto kBack = OutcomeStatus::kCameBack;

const std::string kLinkage = "wastegate_linkage:seized_open", kSeal = "plug_well_seal:leaking";
const EvidenceItem kFlat{"symptom:lack_of_power", "present"};
const EvidenceItem kTurbo{"earlier_repair:replace turbocharger", "present"};

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

// A row as an answer shows it, with its fixes counted from the shop.
LikelyCause row(const std::string& key, const PlainCounter& shop, double probability = 0.6) {
  LikelyCause cause;
  cause.component = key.substr(0, key.find(':'));
  cause.failure = key.substr(key.find(':') + 1);
  cause.probability = probability;
  const auto all = shop.tally({});
  cause.fixes = single_fixes(all->profiles, key);
  cause.fixes_together = fixes_together(all->profiles, key);
  return cause;
}

std::vector<Warning> warned(const std::vector<EvidenceItem>& items, const LikelyCause& cause,
                            const PlainCounter& shop) {
  return watch_out(items, {cause}, {}, shop, words()).value();
}

TEST(WatchOut, SaysWhatVehiclesWithThatRepairAlreadyDoneTurnedOutToHave) {
  std::vector<PlainCase> cases;
  add(cases, 5, {kLinkage, {kFlat, kTurbo}, {"earlier_repairs"}});
  add(cases, 1, {"charge_air_hose:split", {kFlat, kTurbo}, {"earlier_repairs"}});
  add(cases, 9, {"turbocharger:worn", {kFlat}, {"earlier_repairs"}});
  const PlainCounter shop(cases);
  const auto warnings = warned({kTurbo, kFlat}, row(kLinkage, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kEarlierRepair);
  EXPECT_EQ(warnings[0].about, "replace turbocharger");
  EXPECT_EQ(warnings[0].share.count, 5U);
  EXPECT_EQ(warnings[0].share.out_of, 6U);
  EXPECT_THAT(warnings[0].text, HasSubstr("Of 6 that came in like this"));
  EXPECT_THAT(warnings[0].text, HasSubstr("5 turned out to be wastegate linkage"));
  EXPECT_THAT(warnings[0].text, HasSubstr("we never see those it cured"));
}

TEST(WatchOut, WithTooFewLikeThisCountsEveryVehicleWithThatRepair) {
  std::vector<PlainCase> cases;
  add(cases, 4, {kLinkage, {kFlat, kTurbo}, {"earlier_repairs"}});
  add(cases, 3, {kLinkage, {kTurbo}, {"earlier_repairs"}});
  const PlainCounter shop(cases);
  const auto warnings = warned({kTurbo, kFlat}, row(kLinkage, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.out_of, 7U);
  EXPECT_THAT(warnings[0].text, Not(HasSubstr("like this")));
}

// The ranking may lead with another cause; what these vehicles had is what counts here.
TEST(WatchOut, NamesTheCauseTheseVehiclesHadMostOften) {
  std::vector<PlainCase> cases;
  add(cases, 6, {"charge_air_hose:split", {kFlat, kTurbo}, {"earlier_repairs"}});
  add(cases, 30, {kLinkage, {kFlat}, {"earlier_repairs"}});
  const PlainCounter shop(cases);
  const auto warnings = warned({kTurbo, kFlat}, row(kLinkage, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.count, 6U);
  EXPECT_THAT(warnings[0].text, HasSubstr("6 turned out to be charge-air hose, split"));
}

TEST(WatchOut, IsSilentWhereTooFewCameInWithThatRepair) {
  std::vector<PlainCase> cases;
  add(cases, 4, {kLinkage, {kFlat, kTurbo}, {"earlier_repairs"}});
  const PlainCounter shop(cases);
  EXPECT_TRUE(warned({kTurbo, kFlat}, row(kLinkage, shop), shop).empty());
}

TEST(WatchOut, ARepairKnownNotToBeDoneWarnsOfNothing) {
  std::vector<PlainCase> cases;
  add(cases, 9, {kLinkage, {kFlat, kTurbo}, {"earlier_repairs"}});
  const PlainCounter shop(cases);
  EXPECT_TRUE(warned({{kTurbo.attribute, "absent"}}, row(kLinkage, shop), shop).empty());
}

PlainCounter seal_shop(int coil_back, int coil_stayed) {
  std::vector<PlainCase> cases;
  const std::vector<std::string> coil{"replace ignition_coil"};
  const std::vector<std::string> both{"replace ignition_coil", "replace plug_well_seal"};
  add(cases, coil_back, {kSeal, {}, {}, kBack, coil});
  add(cases, coil_stayed, {kSeal, {}, {}, kStayed, coil});
  add(cases, 1, {kSeal, {}, {}, kBack, both});
  add(cases, 13, {kSeal, {}, {}, kStayed, both});
  return PlainCounter(cases);
}

TEST(WatchOut, OwnFixThatCameBackIsNamedWithTheOneThatLasted) {
  const PlainCounter shop = seal_shop(9, 2);
  const auto warnings = warned({}, row(kSeal, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kFixCameBack);
  EXPECT_EQ(warnings[0].share.count, 9U);
  EXPECT_EQ(warnings[0].share.out_of, 11U);
  EXPECT_THAT(warnings[0].text, HasSubstr("replace ignition coil alone came back 9 of 11"));
  EXPECT_THAT(warnings[0].text, HasSubstr("replace plug-well seal: 1 of 14"));
}

// 0 of 10 proves less than 4 of 80: by their 90 % Jeffreys intervals at most 17 % and 10 % (the
// upper 5 % points of Beta(1/2, 10 1/2) and Beta(4 1/2, 76 1/2)).
TEST(WatchOut, TheFixNamedAsLastingIsTheOneBestProved) {
  std::vector<PlainCase> cases = seal_shop(9, 2).plain();
  add(cases, 10, {kSeal, {}, {}, kStayed, {"replace cam_cover_gasket"}});
  add(cases, 4, {kSeal, {}, {}, kBack, {"replace plug_well_seal"}});
  add(cases, 76, {kSeal, {}, {}, kStayed, {"replace plug_well_seal"}});
  const PlainCounter shop(cases);
  const auto warnings = warned({}, row(kSeal, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text, HasSubstr("; replace plug-well seal: 4 of 80"));
}

TEST(WatchOut, AFixThatAlsoCameBackOftenIsNotNamedAsLasting) {
  std::vector<PlainCase> cases;
  add(cases, 9, {kSeal, {}, {}, kBack, {"replace ignition_coil"}});
  add(cases, 4, {kSeal, {}, {}, kBack, {"replace plug_well_seal"}});
  add(cases, 6, {kSeal, {}, {}, kStayed, {"replace plug_well_seal"}});
  const PlainCounter shop(cases);
  const auto warnings = warned({}, row(kSeal, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].text, Not(HasSubstr("plug-well seal:")));
}

TEST(WatchOut, AComebackShareBelowAThirdOrTooFewOutcomesIsNoWarning) {
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
    const PlainCounter shop = seal_shop(each.back, each.stayed);
    EXPECT_EQ(warned({}, row(kSeal, shop), shop).size(), each.warnings) << each.name;
  }
}

TEST(WatchOut, ACheckThatPassedOnThisCauseIsNamedWithItsWay) {
  const EvidenceItem pass{"check:plug_well_look", "pass"}, fail{"check:plug_well_look", "fail"};
  const EvidenceItem misled{"misled:plug_well_look", "pass"};
  std::vector<PlainCase> cases;
  add(cases, 4, {kSeal, {pass, misled}});
  add(cases, 7, {kSeal, {fail}});
  add(cases, 8, {"ignition_coil:internal_fault", {pass}});
  const PlainCounter shop(cases);
  const auto warnings = warned({}, row(kSeal, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kCheckMisled);
  EXPECT_EQ(warnings[0].about, "plug_well_look");
  EXPECT_EQ(warnings[0].share.count, 4U);
  EXPECT_EQ(warnings[0].share.out_of, 11U);
  EXPECT_THAT(warnings[0].text, HasSubstr("misled us 4 of 11 times"));
  EXPECT_THAT(warnings[0].text, HasSubstr(words().find(EntryKind::kCheck, "plug_well_look")->how));
}

// 90 % Jeffreys of 4 of 11: the 5 % and 95 % points of Beta(4.5, 7.5) by mpmath.
TEST(WatchOut, AMisleadingCheckIsGivenWithItsIntervalOverClearVerdicts) {
  const EvidenceItem pass{"check:plug_well_look", "pass"}, fail{"check:plug_well_look", "fail"};
  std::vector<PlainCase> cases;
  add(cases, 4, {kSeal, {pass, {"misled:plug_well_look", "pass"}}});
  add(cases, 7, {kSeal, {fail}});
  add(cases, 6, {kSeal, {{"check:plug_well_look", "unclear"}}});
  const PlainCounter shop(cases);
  const auto warnings = warned({}, row(kSeal, shop), shop);
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.out_of, 11U);
  EXPECT_NEAR(warnings[0].share.interval.low, 0.166385, 5e-7);
  EXPECT_NEAR(warnings[0].share.interval.high, 0.608239, 5e-7);
  EXPECT_THAT(warnings[0].text, HasSubstr("4 of 11 times (90 % interval 17 to 61 %)"));
}

TEST(WatchOut, ACheckThatSeldomMisledOrWasSeldomDoneIsNotWarnedOf) {
  const struct {
    const char* name;
    int misled, right;
    std::size_t warnings;
  } table[] = {{"a fifth exactly", 2, 8, 1},
               {"below a fifth", 2, 9, 0},
               {"done five times", 1, 4, 1},
               {"done four times", 4, 0, 0}};
  for (const auto& each : table) {
    std::vector<PlainCase> cases;
    add(cases, each.misled,
        {kSeal, {{"check:plug_well_look", "pass"}, {"misled:plug_well_look", "pass"}}});
    add(cases, each.right, {kSeal, {{"check:plug_well_look", "fail"}}});
    const PlainCounter shop(cases);
    EXPECT_EQ(warned({}, row(kSeal, shop), shop).size(), each.warnings) << each.name;
  }
}

TEST(WatchOut, AnUnlikelyCausesFixesAndChecksAreNotWarnedOf) {
  const PlainCounter shop = seal_shop(9, 2);
  EXPECT_TRUE(warned({}, row(kSeal, shop, 0.09), shop).empty());
}

TEST(WatchOut, WithoutRankedCausesThereIsNothingToSay) {
  const PlainCounter shop = seal_shop(9, 2);
  EXPECT_TRUE(watch_out({kTurbo}, {}, {}, shop, words())->empty());
}

}  // namespace
}  // namespace shoplore::testing
