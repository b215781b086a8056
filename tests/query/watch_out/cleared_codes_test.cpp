// No codes now: what that is worth once they were cleared, or while the lamp is on.
#include "query/watch_out/cleared_codes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

const std::string kEgr = "egr_passage:blocked";
const EvidenceItem kCleared{"work_sign:codes_recently_cleared", "present"},
    kBattery{"work_sign:battery_disconnected_lately", "present"},
    kLamp{"symptom:engine_lamp_on", "present"}, kCode{"code:P0401", "present"},
    kAtArrival{"codes:at_arrival", "present"}, kLater{"codes:later", "present"};

std::vector<Warning> warned(const std::vector<PlainCase>& cases,
                            const std::vector<EvidenceItem>& items,
                            const std::vector<std::string>& known = {}) {
  return WatchShop(cases).warned(warn_of_cleared_codes, items, {}, known);
}

TEST(ClearedCodes, AreSpokenOfAlsoWithoutAnyCase) {
  const auto warnings = warned({}, {kCleared});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kCodesCleared);
  EXPECT_EQ(warnings[0].about, "codes_recently_cleared");
  EXPECT_EQ(warnings[0].share.out_of, 0U);
  EXPECT_THAT(warnings[0].text, HasSubstr("proves nothing"));
  EXPECT_THAT(warnings[0].text, Not(HasSubstr("one later")));
}

TEST(ClearedCodes, WhatIsStatedDecides) {
  const struct {
    const char* name;
    std::vector<EvidenceItem> items;
    std::vector<std::string> known;
    std::size_t warnings;
  } table[] = {{"codes cleared", {kCleared}, {}, 1},
               {"battery disconnected", {kBattery}, {}, 1},
               {"both", {kBattery, kCleared}, {}, 2},
               {"cleared denied", {{kCleared.attribute, "absent"}}, {"work_looked_for"}, 0},
               {"lamp on, scanned, no code", {kLamp}, {"scanned"}, 1},
               {"lamp on, nobody scanned", {kLamp}, {}, 0},
               {"lamp on, scanned, a code", {kLamp, kCode}, {"scanned"}, 0},
               {"lamp off, scanned", {{kLamp.attribute, "absent"}}, {"scanned"}, 0},
               {"a lamp of a level", {{"symptom:coolant_lamp_on", "present"}}, {"scanned"}, 0},
               {"no lamp", {{"symptom:misfire", "present"}}, {"scanned"}, 0}};
  for (const auto& each : table) {
    EXPECT_EQ(warned({}, each.items, each.known).size(), each.warnings) << each.name;
  }
}

// Of 8 scanned with the lamp on 2 had a code at once; of the other 6, 4 had one later.
// 90 % Jeffreys of 4 of 6: R 4.2.2 qbeta(c(.05, .95), 4.5, 2.5) = .341, .896.
TEST(ClearedCodes, SuchCasesThatHadCodesLaterAreCounted) {
  const std::set<std::string> scanned{"scanned"};
  std::vector<PlainCase> cases;
  add(cases, 4, {kEgr, {kLamp, kCode, kLater}, scanned});
  add(cases, 2, {kEgr, {kLamp}, scanned});
  add(cases, 1, {kEgr, {kLamp, kCode, kAtArrival}, scanned});
  add(cases, 1, {kEgr, {kLamp, kCode, kAtArrival, kLater}, scanned});
  add(cases, 9, {kEgr, {kLamp}});  // nobody scanned
  const auto warnings = warned(cases, {kLamp}, {"scanned"});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].share.count, 4U);
  EXPECT_EQ(warnings[0].share.out_of, 6U);
  EXPECT_THAT(warnings[0].text, HasSubstr("Of 6 cases like that and no code at first, 4 had one "
                                          "later (90 %: 34 to 90 %)"));
  EXPECT_THAT(ids(warnings[0]), ElementsAre(4, 3, 2, 1));
}

TEST(ClearedCodes, WhereNobodyWroteALaterScanDownNothingIsCounted) {
  std::vector<PlainCase> cases;
  add(cases, 20, {kEgr, {kLamp}, {"scanned"}});
  EXPECT_EQ(warned(cases, {kLamp}, {"scanned"}).at(0).share.out_of, 0U);
}

}  // namespace
}  // namespace shoplore::testing
