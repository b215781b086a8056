#include "query/patterns/pattern_book.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/query/patterns/drawn_counter.hpp"

namespace shoplore::testing {
namespace {

using ::testing::HasSubstr;

const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"components.json",
            R"({"kind":"component","entries":[{"id":"hose","name":"hose"},{"id":"turbo","name":"turbo"},)"
            R"({"id":"pipe","name":"pipe","alias_of":"hose"}]})"},
           {"failures.json",
            R"({"kind":"failure","entries":[{"id":"split","name":"split"},{"id":"worn","name":"worn"}]})"}})
          .value();
  return vocabulary;
}

const EvidenceItem kWhistle{"symptom:whistle", "present"}, kNoWhistle{"symptom:whistle", "absent"};
const EvidenceItem kCode{"code:P0299", "present"}, kFamily{"engine_family", "bw16d"};

class Shop {
 public:
  Shop& add(int count, const std::string& cause, std::vector<EvidenceItem> items) {
    items.push_back({"make", "brackwater"});
    std::vector<std::string> known{"scanned", "make"};
    for (const EvidenceItem& item : items) {
      if (known_by(item.attribute) == KnownBy::kItself) known.push_back(item.attribute);
    }
    for (int i = 0; i < count; ++i) counter_.add(items, known, cause);
    return *this;
  }
  [[nodiscard]] PatternBook mined() const { return PatternBook::mine(counter_, words()).value(); }
  [[nodiscard]] Result<PatternList> choose(const PatternChoice& choice = {}) const {
    return mined().choose(choice, counter_, words());
  }
  [[nodiscard]] const DrawnCounter& counter() const { return counter_; }

 private:
  DrawnCounter counter_;
};

// The whistle tells the hose; the code makes no difference.
Shop whistling() {
  Shop shop;
  shop.add(30, "hose:split", {kWhistle, kCode, kFamily}).add(30, "hose:split", {kWhistle});
  shop.add(2, "turbo:worn", {kWhistle, kCode, kFamily}).add(2, "turbo:worn", {kWhistle});
  return shop.add(40, "turbo:worn", {kNoWhistle, kCode, kFamily})
      .add(40, "turbo:worn", {kNoWhistle});
}

std::vector<std::vector<EvidenceItem>> sets_of(const PatternList& list, const std::string& cause) {
  std::vector<std::vector<EvidenceItem>> sets;
  for (const Pattern& each : list.patterns) {
    if (each.cause == cause) sets.push_back(each.items);
  }
  return sets;
}

TEST(PatternBook, ALongerSetThatSaysNoMoreIsLeftOut) {
  const auto list = whistling().choose();
  ASSERT_TRUE(list);
  EXPECT_EQ(sets_of(*list, "hose:split"), (std::vector<std::vector<EvidenceItem>>{{kWhistle}}));
  EXPECT_GT(list->found, list->patterns.size()) << "the longer ones were found, and left out";
}

TEST(PatternBook, ALongerSetThatSaysMoreStays) {
  Shop shop;
  shop.add(40, "hose:split", {kWhistle, kCode}).add(20, "hose:split", {kWhistle});
  shop.add(40, "turbo:worn", {kWhistle}).add(60, "turbo:worn", {kNoWhistle, kCode});
  const auto sets = sets_of(*shop.choose(), "hose:split");
  EXPECT_THAT(sets, ::testing::Contains(std::vector<EvidenceItem>{kWhistle}));
  EXPECT_THAT(sets, ::testing::Contains(std::vector<EvidenceItem>{kCode, kWhistle}));
}

TEST(PatternBook, WithinOneFamilyTheWiderScopesDoNotCount) {
  const auto list = whistling().choose({"", "BW16D", ""});
  ASSERT_TRUE(list);
  EXPECT_EQ(list->scope, kFamily);
  EXPECT_EQ(list->scope_cases, 72U);
  EXPECT_EQ(sets_of(*list, "hose:split"), (std::vector<std::vector<EvidenceItem>>{{kWhistle}}));
  for (const Pattern& each : list->patterns) EXPECT_EQ(each.scope, kFamily);
}

TEST(PatternBook, APatternHasItsCountsAndOpensToItsCases) {
  const Shop shop = whistling();
  const auto list = shop.choose({"", "", "hose:split"});
  ASSERT_EQ(list->patterns.size(), 1U);
  const Pattern& pattern = list->patterns.front();
  EXPECT_EQ(pattern.table, (DiagnosticTable{60, 4, 0, 80}));
  EXPECT_EQ(pattern.share.count, 60U);
  EXPECT_EQ(pattern.share.out_of, 64U);
  EXPECT_EQ(pattern.share.interval, jeffreys(60, 64));
  EXPECT_LE(pattern.p, pattern.q);
  EXPECT_LE(pattern.q, pattern.holm);
  EXPECT_EQ(cases_of(pattern, shop.counter())->size(), 60U);
}

TEST(PatternBook, TheSameIsSaidUnderEveryChoice) {
  const Shop shop = whistling();
  const auto all = shop.choose(), chosen = shop.choose({"", "", "pipe:split"});
  ASSERT_TRUE(chosen) << describe(chosen.error());
  ASSERT_EQ(chosen->patterns.size(), 1U);
  for (const Pattern& each : all->patterns) {
    if (each.cause == "hose:split") {
      EXPECT_EQ(each.q, chosen->patterns.front().q);
    }
  }
}

TEST(PatternBook, WhatIsUnknownIsNamedWithWhatThereIs) {
  const Shop shop = whistling();
  const struct {
    const char* name;
    PatternChoice choice;
    const char* place;
    const char* says;
  } rows[] = {{"family", {"", "XX99", ""}, "engine_family", "there are: BW16D"},
              {"make", {"Nosuch", "", ""}, "make", "there are: Brackwater"},
              {"no failure", {"", "", "hose"}, "cause", "expected component:failure"},
              {"component", {"", "", "flux:split"}, "cause", "\"flux\" is not a known component"},
              {"failure", {"", "", "hose:bored"}, "cause", "\"bored\" is not a known failure"}};
  for (const auto& row : rows) {
    const auto list = shop.choose(row.choice);
    ASSERT_FALSE(list) << row.name;
    EXPECT_EQ(list.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(list.error().place, row.place) << row.name;
    EXPECT_THAT(list.error().message, HasSubstr(row.says)) << row.name;
  }
}

TEST(PatternBook, BelowAHundredCasesNothingIsMined) {
  Shop few;
  few.add(50, "hose:split", {kWhistle}).add(49, "turbo:worn", {kNoWhistle});
  EXPECT_FALSE(few.mined().is_mined());
  EXPECT_TRUE(few.choose()->patterns.empty());
  EXPECT_FALSE(few.choose({"", "XX99", ""})) << "a mistake is named all the same";
  EXPECT_TRUE(few.add(1, "turbo:worn", {kNoWhistle}).mined().is_mined());
}

TEST(PatternBook, NoCasesAtAllAreFewCasesAndNoMistake) {
  const auto list = Shop().choose();
  ASSERT_TRUE(list) << describe(list.error());
  EXPECT_TRUE(list->patterns.empty());
}

TEST(PatternBook, OfEachOutcomeTheStrongestComesFirst) {
  const auto list = whistling().choose();
  std::vector<std::string> met;
  double last = 1;
  for (const Pattern& each : list->patterns) {
    if (std::find(met.begin(), met.end(), each.cause) != met.end()) break;
    EXPECT_LE(each.share.interval.low, last);
    last = each.share.interval.low;
    met.push_back(each.cause);
  }
  EXPECT_EQ(met.size(), 2U);
}

}  // namespace
}  // namespace shoplore::testing
