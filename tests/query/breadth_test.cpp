// Looking wider: where it stops, what it drops and what it never drops.
#include "query/breadth.hpp"

#include <gtest/gtest.h>

#include <iostream>
#include <random>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const EvidenceItem kFamily{"engine_family", "bw16d"}, kMake{"make", "brackwater"};
const EvidenceItem kFlat{"symptom:flat", "present"}, kNoWhistle{"symptom:whistle", "absent"};
const EvidenceItem kCode{"code:P0299", "present"}, kCold{"condition:cold", "present"};

Breadth looked(const std::vector<EvidenceItem>& items, const PlainCounter& shop,
               const Filter& filter = {}) {
  const auto ranking = rank_simply(ranking_items(items), filter, shop);
  return look_wider(items, filter, shop, ranking.value()).value();
}

std::vector<std::string> scopes(const Breadth& breadth) {
  std::vector<std::string> names;
  for (const Width& width : breadth.widths) names.push_back(width.scope);
  return names;
}

std::vector<std::uint32_t> cases(const Breadth& breadth) {
  std::vector<std::uint32_t> counts;
  for (const Width& width : breadth.widths) counts.push_back(width.cases);
  return counts;
}

TEST(Breadth, StopsAtTheFirstWidthWithFiveCases) {
  std::vector<PlainCase> shop;
  add(shop, 5, {"a:x", {kFamily, kMake, kFlat}});
  add(shop, 9, {"a:x", {kMake, kFlat}});
  const auto breadth = looked({kFamily, kMake, kFlat}, PlainCounter(shop));
  EXPECT_EQ(scopes(breadth), (std::vector<std::string>{"engine family BW16D"}));
  EXPECT_EQ(cases(breadth), (std::vector<std::uint32_t>{5}));
  EXPECT_EQ(breadth.tally.cases, 5U);
}

TEST(Breadth, GoesFromFamilyToMakeToAllVehicles) {
  std::vector<PlainCase> shop;
  add(shop, 2, {"a:x", {kFamily, kMake, kFlat}});
  add(shop, 2, {"a:x", {kMake, kFlat}});
  add(shop, 3, {"a:x", {kFlat}});
  const auto breadth = looked({kFamily, kMake, kFlat}, PlainCounter(shop));
  EXPECT_EQ(scopes(breadth),
            (std::vector<std::string>{"engine family BW16D", "make Brackwater", "all vehicles"}));
  EXPECT_EQ(cases(breadth), (std::vector<std::uint32_t>{2, 4, 7}));
}

TEST(Breadth, WithoutAMakeInTheQuestionThatWidthIsSkipped) {
  std::vector<PlainCase> shop;
  add(shop, 2, {"a:x", {kFamily, kMake, kFlat}});
  const auto breadth = looked({kFamily, kFlat}, PlainCounter(shop));
  EXPECT_EQ(scopes(breadth), (std::vector<std::string>{"engine family BW16D", "all vehicles"}));
}

// An engine that several makes use: the make alone has fewer of these cases than the family.
TEST(Breadth, AMakeNarrowerThanTheFamilyIsNoWiderWidth) {
  std::vector<PlainCase> shop;
  add(shop, 3, {"a:x", {kFamily, {"make", "dunmarrow"}, kFlat}});
  add(shop, 1, {"a:x", {kFamily, kMake, kFlat}});
  add(shop, 2, {"a:x", {kFlat}});
  const auto breadth = looked({kFamily, kMake, kFlat}, PlainCounter(shop));
  EXPECT_EQ(scopes(breadth), (std::vector<std::string>{"engine family BW16D", "all vehicles"}));
  EXPECT_EQ(cases(breadth), (std::vector<std::uint32_t>{4, 6}));
}

// The code stands with cause a alone, the condition with both: the condition tells less.
TEST(Breadth, DropsTheLeastTellingFindingFirstAndSaysWhich) {
  std::vector<PlainCase> shop;
  add(shop, 3, {"a:x", {kFlat, kCode, kCold}, {"scanned"}});
  add(shop, 9, {"a:x", {kFlat, kCode}, {"scanned"}});
  add(shop, 20, {"b:x", {{"symptom:flat", "absent"}}, {"scanned"}});
  add(shop, 5, {"b:x", {kCold}, {"scanned"}});
  const auto breadth = looked({kCode, kCold, kFlat}, PlainCounter(shop));
  ASSERT_EQ(cases(breadth), (std::vector<std::uint32_t>{3, 12}));
  EXPECT_EQ(breadth.widths[0].dropped, std::nullopt);
  EXPECT_EQ(breadth.widths[1].dropped, kCold);
  EXPECT_EQ(breadth.widths[1].items, (std::vector<EvidenceItem>{kCode, kFlat}));
}

TEST(Breadth, NeverDropsTheLastFindingThatIsPresent) {
  std::vector<PlainCase> shop;
  add(shop, 1, {"a:x", {kFlat}});
  add(shop, 20, {"b:x", {kNoWhistle, kCold}});
  const auto breadth = looked({kCold, kFlat, kNoWhistle}, PlainCounter(shop));
  EXPECT_EQ(breadth.widths.back().items, (std::vector<EvidenceItem>{kFlat}));
  EXPECT_EQ(breadth.tally.cases, 1U);
}

TEST(Breadth, AFindingNeverSeenMatchesNothing) {
  std::vector<PlainCase> shop;
  add(shop, 20, {"b:x", {kNoWhistle, kMake}});
  const auto breadth = looked({kMake, kFlat, kNoWhistle}, PlainCounter(shop));
  EXPECT_EQ(breadth.tally.cases, 0U);
}

TEST(Breadth, AVehicleAloneIsNotWidenedToAllVehicles) {
  std::vector<PlainCase> shop;
  add(shop, 2, {"a:x", {kFamily, kMake}});
  add(shop, 30, {"a:x", {kFlat}});
  const auto breadth = looked({kFamily, kMake}, PlainCounter(shop));
  EXPECT_EQ(scopes(breadth), (std::vector<std::string>{"engine family BW16D", "make Brackwater"}));
  EXPECT_EQ(breadth.tally.cases, 2U);
}

// Over random records: each width holds all cases of the one before, the last is the one counted
// by, each drop removes exactly one finding, and a filter never adds a case.
TEST(Breadth, WidthsOnlyEverGrow) {
  constexpr std::uint64_t kSeed = 20'260'419;
  std::cout << "seed " << kSeed << "\n";
  std::mt19937_64 random(kSeed);
  const std::vector<EvidenceItem> all{kFamily, kMake, kFlat, kNoWhistle, kCode, kCold};
  for (int round = 0; round < 400; ++round) {
    std::vector<PlainCase> shop;
    for (std::uint64_t i = 5 + random() % 40; i > 0; --i) {
      PlainCase each{random() % 2 == 0 ? "a:x" : "b:x", {}, {"scanned"}};
      for (const EvidenceItem& item : all) {
        if (random() % 2 == 0) each.items.push_back(item);
      }
      shop.push_back(each);
    }
    std::vector<EvidenceItem> asked;
    for (const EvidenceItem& item : all) {
      if (random() % 3 > 0) asked.push_back(item);
    }
    const PlainCounter counter(shop);
    const auto breadth = looked(asked, counter);
    ASSERT_FALSE(breadth.widths.empty());
    ASSERT_EQ(breadth.widths.back().cases, breadth.tally.cases);
    for (std::size_t i = 1; i < breadth.widths.size(); ++i) {
      const Width &width = breadth.widths[i], &before = breadth.widths[i - 1];
      ASSERT_GE(width.cases, before.cases) << round;
      ASSERT_LT(before.cases, kEnoughCases) << round;
      ASSERT_EQ(width.items.size() + (width.dropped ? 1 : 0), before.items.size()) << round;
    }
    Filter filter;
    filter.make = "brackwater";
    const auto first = looked(asked, counter, filter).widths.front();
    ASSERT_LE(first.cases, breadth.widths.front().cases) << round;
  }
}

}  // namespace
}  // namespace shoplore::testing
