// Signs of earlier work: what stated ones led to, and which are worth looking for.
#include "query/watch_out/work_signs.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const std::string kHose = "charge_air_hose:split", kLinkage = "wastegate_linkage:seized_open";
const EvidenceItem kClip{"work_sign:hose_clip_wrong", "present"};
const EvidenceItem kFamily{"engine_family", "bw16d"}, kMake{"make", "brackwater"};
const std::set<std::string> kLooked{"work_looked_for"};

// On this family 6 of 8 with the sign were the hose; without it 10 of 40.
std::vector<PlainCase> clip_shop() {
  std::vector<PlainCase> cases;
  add(cases, 6, {kHose, {kClip, kFamily, kMake}, kLooked});
  add(cases, 2, {kLinkage, {kClip, kFamily, kMake}, kLooked});
  add(cases, 10, {kHose, {kFamily, kMake}, kLooked});
  add(cases, 30, {kLinkage, {kFamily, kMake}, kLooked});
  add(cases, 50, {kLinkage, {kFamily, kMake}});  // nobody looked
  return cases;
}

std::vector<Warning> warned(const WatchShop& shop, const std::vector<EvidenceItem>& items,
                            const std::vector<std::string>& causes) {
  return shop.warned(warn_of_work_signs, items, causes);
}

// 90 % Jeffreys of 6 of 8: R 4.2.2 qbeta(c(.05, .95), 6.5, 2.5) = .462, .924.
TEST(WorkSigns, AStatedOneSaysWhatItLedToOnThisFamily) {
  const auto warnings = warned(WatchShop(clip_shop()), {kFamily, kMake, kClip}, {kLinkage});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].kind, WarningKind::kWorkSign);
  EXPECT_EQ(warnings[0].stated, Stated::kYes);
  EXPECT_EQ(warnings[0].about, "hose_clip_wrong");
  EXPECT_EQ(warnings[0].cause, kHose);
  EXPECT_EQ(warnings[0].text,
            "Sign of earlier work, wrong hose clip: of 8 with it on engine family BW16D, 6 turned "
            "out to be charge-air hose, split (90 %: 46 to 92 %)");
  EXPECT_THAT(ids(warnings[0]), ElementsAre(6, 5, 4, 3, 2, 1));
}

TEST(WorkSigns, WhereThisFamilyHasTooFewTheMakeAndThenAllVehiclesCount) {
  const EvidenceItem other{"engine_family", "bw20d"}, another{"make", "dunmarrow"};
  const WatchShop shop(clip_shop());
  EXPECT_THAT(warned(shop, {other, kMake, kClip}, {kLinkage}).at(0).text,
              HasSubstr("of 8 with it on make Brackwater"));
  EXPECT_THAT(warned(shop, {other, another, kClip}, {kLinkage}).at(0).text,
              HasSubstr("of 8 with it on any vehicle"));
}

TEST(WorkSigns, ACauseAsCommonWithoutTheSignIsNotPutDownToIt) {
  std::vector<PlainCase> cases = clip_shop();
  add(cases, 60, {kHose, {kFamily}, kLooked});  // without it 70 of 100 now
  EXPECT_TRUE(warned(WatchShop(cases), {kFamily, kClip}, {kLinkage}).empty());
}

TEST(WorkSigns, ASignThatIsDeniedIsNeitherStatedNorLookedFor) {
  const WatchShop shop(clip_shop());
  EXPECT_TRUE(warned(shop, {kFamily, {kClip.attribute, "absent"}}, {kHose}).empty());
}

// Of 16 hoses where somebody looked 6 had it: R 4.2.2 qbeta(c(.05, .95), 6.5, 10.5) = .202, .579;
// of the 32 others 2 did.
TEST(WorkSigns, OfALikelyCauseTheUsualSignIsWorthLookingFor) {
  const auto warnings = warned(WatchShop(clip_shop()), {kFamily}, {kHose});
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_EQ(warnings[0].stated, Stated::kNo);
  EXPECT_EQ(warnings[0].share.count, 6U);
  EXPECT_EQ(warnings[0].share.out_of, 16U);
  EXPECT_EQ(warnings[0].text,
            "Look for a sign of earlier work, wrong hose clip: of 16 with charge-air hose, split "
            "where somebody looked, 6 had it (90 %: 20 to 58 %); of all others, 2 of 32");
}

TEST(WorkSigns, WhereNobodyLookedNothingCounts) {
  std::vector<PlainCase> cases;
  add(cases, 2, {kHose, {kClip}, kLooked});
  add(cases, 200, {kHose, {}});
  EXPECT_TRUE(warned(WatchShop(cases), {}, {kHose}).empty());
}

// 3 of 16: the interval begins at .071, by R 4.2.2 qbeta(.05, 3.5, 13.5).
TEST(WorkSigns, OnlyARateCrediblyAboveTheOthersIsWorthLookingFor) {
  const struct {
    const char* name;
    int others_of_100;
    std::size_t warnings;
  } table[] = {{"seldom elsewhere", 1, 1}, {"just below", 7, 1}, {"just above", 8, 0}};
  for (const auto& each : table) {
    std::vector<PlainCase> cases;
    add(cases, 3, {kHose, {kClip}, kLooked});
    add(cases, 13, {kHose, {}, kLooked});
    add(cases, each.others_of_100, {kLinkage, {kClip}, kLooked});
    add(cases, 100 - each.others_of_100, {kLinkage, {}, kLooked});
    EXPECT_EQ(warned(WatchShop(cases), {}, {kHose}).size(), each.warnings) << each.name;
  }
}

}  // namespace
}  // namespace shoplore::testing
