// Repairs already done in vain: stated ones, and those one might order next.
#include "query/watch_out/earlier_repairs.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

const std::string kLinkage = "wastegate_linkage:seized_open", kHose = "charge_air_hose:split",
                  kWorn = "turbocharger:worn";
const EvidenceItem kFlat{"symptom:lack_of_power", "present"}, kCode{"code:P0299", "present"};
const EvidenceItem kFamily{"engine_family", "bw16d"}, kOther{"engine_family", "dm22d"};
const EvidenceItem kTurbo{"earlier_repair:replace turbocharger", "present"};
const std::set<std::string> kAsked{"earlier_repairs"};

std::vector<Warning> warned(const WatchShop& shop, const std::vector<EvidenceItem>& items) {
  return shop.warned(warn_of_earlier_repairs, items, {kLinkage});
}

// 90 % Jeffreys of 5 of 6: R 4.2.2 qbeta(c(.05, .95), 5.5, 1.5) = .505, .970.
TEST(EarlierRepairs, SaysWhatVehiclesWithThatRepairAlreadyDoneTurnedOutToHave) {
  std::vector<PlainCase> cases;
  add(cases, 5, {kLinkage, {kFlat, kTurbo}, kAsked});
  add(cases, 1, {kHose, {kFlat, kTurbo}, kAsked});
  add(cases, 9, {kWorn, {kFlat}, kAsked});
  const auto warnings = warned(WatchShop(cases), {kTurbo, kFlat});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kEarlierRepair);
  EXPECT_EQ(warnings[0].stated, Stated::kYes);
  EXPECT_EQ(warnings[0].about, "replace turbocharger");
  EXPECT_EQ(warnings[0].cause, kLinkage);
  EXPECT_EQ(warnings[0].share.count, 5U);
  EXPECT_EQ(warnings[0].share.out_of, 6U);
  EXPECT_THAT(
      warnings[0].text,
      HasSubstr("Of 6 that came in like this with this already done (replace turbocharger), "
                "5 turned out to be wastegate linkage, seized open (90 %: 51 to 97 %)"));
  EXPECT_THAT(warnings[0].text, HasSubstr("we never see those it cured"));
  EXPECT_THAT(ids(warnings[0]), ElementsAre(5, 4, 3, 2, 1));
}

TEST(EarlierRepairs, WithTooFewLikeThisCountsEveryVehicleWithThatRepair) {
  std::vector<PlainCase> cases;
  add(cases, 4, {kLinkage, {kFlat, kTurbo}, kAsked});
  add(cases, 3, {kLinkage, {kTurbo}, kAsked});
  const auto warnings = warned(WatchShop(cases), {kTurbo, kFlat});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.out_of, 7U);
  EXPECT_THAT(warnings[0].text, HasSubstr("with any complaint"));
}

// The ranking may lead with another cause; what these vehicles had is what counts here.
TEST(EarlierRepairs, NamesTheCauseTheseVehiclesHadMostOften) {
  std::vector<PlainCase> cases;
  add(cases, 6, {kHose, {kFlat, kTurbo}, kAsked});
  add(cases, 30, {kLinkage, {kFlat}, kAsked});
  const auto warnings = warned(WatchShop(cases), {kTurbo, kFlat});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.count, 6U);
  EXPECT_THAT(warnings[0].text, HasSubstr("6 turned out to be charge-air hose, split"));
}

TEST(EarlierRepairs, IsSilentWhereTooFewCameInWithThatRepair) {
  std::vector<PlainCase> cases;
  add(cases, 4, {kLinkage, {kFlat, kTurbo}, kAsked});
  EXPECT_TRUE(warned(WatchShop(cases), {kTurbo, kFlat}).empty());
}

TEST(EarlierRepairs, ARepairKnownNotToBeDoneIsStillOneThatMightBeOrdered) {
  std::vector<PlainCase> cases;
  add(cases, 9, {kLinkage, {kFlat, kTurbo}, kAsked});
  add(cases, 20, {kHose, {}, kAsked});
  const auto warnings = warned(WatchShop(cases), {{kTurbo.attribute, "absent"}, kFlat});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].stated, Stated::kNo);
}

// 8 of 30 like this, 1 of 100 elsewhere.
std::vector<PlainCase> often_in_vain() {
  std::vector<PlainCase> cases;
  add(cases, 8, {kLinkage, {kFlat, kFamily, kTurbo}, kAsked});
  add(cases, 22, {kLinkage, {kFlat, kFamily}, kAsked});
  add(cases, 15, {kLinkage, {kFlat, kFamily}});  // nobody asked: neither way
  add(cases, 1, {"battery:worn", {kTurbo}, kAsked});
  add(cases, 99, {"battery:worn", {}, kAsked});
  return cases;
}

// 90 % Jeffreys of 8 of 30: the 5 % and 95 % points of Beta(8.5, 22.5), by R 4.2.2 qbeta:
// .153, .412.
TEST(EarlierRepairs, BeforeOrderingSaysHowManyLikeThisHadItInVain) {
  const auto warnings = warned(WatchShop(often_in_vain()), {kFlat, kFamily});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].stated, Stated::kNo);
  EXPECT_EQ(warnings[0].share.count, 8U);
  EXPECT_EQ(warnings[0].share.out_of, 30U);
  EXPECT_EQ(warnings[0].text,
            "Before you replace turbocharger: of 30 that came in like this, 8 had that already "
            "done and it had not cured them (90 %: 15 to 41 %)");
  EXPECT_THAT(ids(warnings[0]), ElementsAre(8, 7, 6, 5, 4, 3, 2, 1));
}

TEST(EarlierRepairs, ARepairOnTheComponentThatHadFailedWasNotInVain) {
  std::vector<PlainCase> cases = often_in_vain();
  for (PlainCase& each : cases) {
    if (each.cause == kLinkage) each.cause = kWorn;
  }
  EXPECT_TRUE(warned(WatchShop(cases), {kFlat, kFamily}).empty());
}

TEST(EarlierRepairs, WhereThisFamilyHasTooFewAnyVehicleCounts) {
  std::vector<PlainCase> cases = often_in_vain();
  add(cases, 6, {kLinkage, {kFlat, kOther}, kAsked});
  const auto warnings = warned(WatchShop(cases), {kFlat, kOther});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.out_of, 36U);
  EXPECT_THAT(warnings[0].text, HasSubstr("like this on any vehicle, 8 had"));
}

// 3 of 30 like this: the interval begins at .037, by R 4.2.2 qbeta(.05, 3.5, 27.5).
TEST(EarlierRepairs, ARateThatOthersMayHaveTooAccusesNobody) {
  const struct {
    const char* name;
    int elsewhere_of_100;
    std::size_t warnings;
  } table[] = {
      {"well below", 1, 1}, {"just below", 3, 1}, {"just above", 4, 0}, {"as often", 10, 0}};
  for (const auto& each : table) {
    std::vector<PlainCase> cases;
    add(cases, 3, {kLinkage, {kFlat, kTurbo}, kAsked});
    add(cases, 27, {kLinkage, {kFlat}, kAsked});
    add(cases, each.elsewhere_of_100, {"battery:worn", {kTurbo}, kAsked});
    add(cases, 100 - each.elsewhere_of_100, {"battery:worn", {}, kAsked});
    EXPECT_EQ(warned(WatchShop(cases), {kFlat}).size(), each.warnings) << each.name;
  }
}

// Of three findings the commonest goes first: with the code alone there are enough.
TEST(EarlierRepairs, AComplaintSeenTooSeldomIsWidenedToItsRarestFinding) {
  const EvidenceItem lamp{"symptom:engine_lamp_on", "present"};
  std::vector<PlainCase> cases;
  add(cases, 10, {kLinkage, {kCode, kTurbo}, kAsked});
  add(cases, 15, {kLinkage, {kCode}, kAsked});
  add(cases, 4, {kLinkage, {kCode, kFlat, lamp}, kAsked});
  add(cases, 40, {"battery:worn", {kFlat}, kAsked});
  add(cases, 60, {"battery:worn", {lamp}, kAsked});
  const auto warnings = warned(WatchShop(cases), {kCode, kFlat, lamp});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.count, 10U);
  EXPECT_EQ(warnings[0].share.out_of, 29U);
}

TEST(EarlierRepairs, WithoutAComplaintNoRepairIsToBeOrdered) {
  EXPECT_TRUE(warned(WatchShop(often_in_vain()), {kFamily}).empty());
}

TEST(EarlierRepairs, AtStakeIsTheRepairOfItsComponent) {
  WorkFigures figures;
  figures.hour_costs = 60;
  figures.repairs[kWorn] = {240, 600, {}, 10};  // 240 min + 600 / 60 h
  const auto warnings = warned(WatchShop(often_in_vain(), figures), {kFlat, kFamily});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_DOUBLE_EQ(warnings[0].minutes, 840);
  EXPECT_DOUBLE_EQ(warnings[0].expected_minutes(), 840 * 8 / 30.0);
}

}  // namespace
}  // namespace shoplore::testing
