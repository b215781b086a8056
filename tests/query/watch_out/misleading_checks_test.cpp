// Checks that misled: passes on a cause they tell about, fails on one they do not.
#include "query/watch_out/misleading_checks.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const std::string kSeal = "plug_well_seal:leaking", kCoil = "ignition_coil:internal_fault",
                  kBearing = "wheel_bearing:worn";
const EvidenceItem kPass{"check:plug_well_look", "pass"}, kFail{"check:plug_well_look", "fail"};
const EvidenceItem kPassMisled{"misled:plug_well_look", "pass"},
    kFailMisled{"misled:plug_well_look", "fail"};

// Of the looks at the well 4 of 11 passed on a leaking seal. Elsewhere checks are good: of 100 that
// tell of a bearing none misled.
std::vector<PlainCase> look_shop(int misled = 4, int right = 7) {
  std::vector<PlainCase> cases;
  add(cases, misled, {kSeal, {kPass, kPassMisled}});
  add(cases, right, {kSeal, {kFail}});
  add(cases, 8, {kCoil, {kPass}});
  add(cases, 100, {kBearing, {{"check:wheel_spin_listen", "fail"}}});
  return cases;
}

std::vector<Warning> warned(const std::vector<PlainCase>& cases,
                            const std::vector<EvidenceItem>& items = {},
                            const std::vector<std::string>& causes = {kSeal},
                            double probability = 0.6) {
  return WatchShop(cases).warned(warn_of_misleading_checks, items, causes, {}, probability);
}

// 90 % Jeffreys of 4 of 11: the 5 % and 95 % points of Beta(4.5, 7.5) by mpmath.
TEST(MisleadingChecks, APassOnThisCauseIsNamedWithItsIntervalAndItsWay) {
  const auto warnings = warned(look_shop());
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kPassMisled);
  EXPECT_EQ(warnings[0].about, "plug_well_look");
  EXPECT_EQ(warnings[0].cause, kSeal);
  EXPECT_EQ(warnings[0].share.count, 4U);
  EXPECT_EQ(warnings[0].share.out_of, 11U);
  EXPECT_NEAR(warnings[0].share.interval.low, 0.166385, 5e-7);
  EXPECT_NEAR(warnings[0].share.interval.high, 0.608239, 5e-7);
  EXPECT_THAT(warnings[0].text, HasSubstr("passed and misled us 4 of 11 times when it was "
                                          "plug-well seal, leaking (90 %: 17 to 61 %)"));
  EXPECT_THAT(warnings[0].text, HasSubstr(words().find(EntryKind::kCheck, "plug_well_look")->how));
  EXPECT_THAT(ids(warnings[0]), ElementsAre(4, 3, 2, 1));
}

TEST(MisleadingChecks, UnclearVerdictsCountNeitherWay) {
  auto cases = look_shop();
  add(cases, 6, {kSeal, {{"check:plug_well_look", "unclear"}}});
  EXPECT_EQ(warned(cases).at(0).share.out_of, 11U);
}

TEST(MisleadingChecks, NoMoreThanChecksUsuallyMisleadIsNoWarning) {
  auto cases = look_shop();
  // Now passes of the bearing's check mislead as often.
  add(cases, 60,
      {kBearing, {{"check:wheel_spin_listen", "pass"}, {"misled:wheel_spin_listen", "pass"}}});
  EXPECT_TRUE(warned(cases).empty());
}

TEST(MisleadingChecks, TooFewVerdictsOrTooFewThatMisledAreNoWarning) {
  const struct {
    const char* name;
    int misled, right;
    std::size_t warnings;
  } table[] = {{"three of five", 3, 2, 1},
               {"three of four", 3, 1, 0},
               {"two of five", 2, 3, 0},
               {"none", 0, 20, 0}};
  for (const auto& each : table) {
    EXPECT_EQ(warned(look_shop(each.misled, each.right)).size(), each.warnings) << each.name;
  }
}

TEST(MisleadingChecks, AnUnlikelyCausesChecksAreNotWarnedOf) {
  EXPECT_TRUE(warned(look_shop(), {}, {kSeal}, 0.09).empty());
}

// 5 fails on a coil, 4 of them said to have misled; 7 on a seal, borne out; 100 elsewhere too.
TEST(MisleadingChecks, AFailThatWasSomethingElseIsCountedOverEveryCause) {
  auto cases = look_shop(0, 7);
  add(cases, 4, {kCoil, {kFail, kFailMisled}});
  add(cases, 1, {kCoil, {kFail}});  // contradicted and nothing said: not known
  const struct {
    const char* name;
    std::vector<EvidenceItem> items;
    std::vector<std::string> causes;
    Stated stated;
  } table[] = {{"told about", {}, {kSeal}, Stated::kNo},
               {"stated", {kFail}, {kBearing}, Stated::kYes},
               {"both", {kFail}, {kSeal}, Stated::kYes}};
  for (const auto& each : table) {
    const auto warnings = warned(cases, each.items, each.causes);
    ASSERT_EQ(warnings.size(), 1U) << each.name;
    EXPECT_EQ(warnings[0].kind, WarningKind::kFailMisled) << each.name;
    EXPECT_EQ(warnings[0].stated, each.stated) << each.name;
    EXPECT_EQ(warnings[0].share.count, 4U) << each.name;
    EXPECT_EQ(warnings[0].share.out_of, 11U) << each.name;
    EXPECT_THAT(warnings[0].text, HasSubstr("failed and misled us 4 of 11 times")) << each.name;
    EXPECT_EQ(ids(warnings[0]).size(), 4U) << each.name;
  }
  EXPECT_TRUE(warned(cases, {}, {kBearing}).empty());
}

}  // namespace
}  // namespace shoplore::testing
