// Mining against going through all cases for every scope, set and outcome.
#include "query/patterns/pattern_tests.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>
#include <map>
#include <random>
#include <set>
#include <tuple>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

using Items = std::vector<EvidenceItem>;
using Key = std::tuple<EvidenceItem, Items, std::string>;  // scope, set, outcome

struct Tests {
  std::uint64_t tested = 0;
  std::map<Key, DiagnosticTable> met;
};

bool chance(std::mt19937_64& random, unsigned percent) {
  return random() % 100 < percent;
}

// Causes that show in some of the findings, so that much is met.
PlainCase drawn(std::mt19937_64& random) {
  const std::string cause = std::vector<std::string>{"a:x", "b:x", "c:y"}[random() % 3];
  PlainCase one{cause, {}};
  const auto leans = [&](char letter) { return cause.front() == letter ? 70U : 25U; };
  const bool is_arlune = chance(random, 50);
  one.items.push_back({"make", is_arlune ? "arlune" : "brackwater"});
  if (chance(random, 80)) one.items.push_back({"engine_family", is_arlune ? "al20d" : "bw16d"});
  if (chance(random, 70)) {
    one.items.push_back({"symptom:whistle", chance(random, leans('a')) ? "present" : "absent"});
  }
  if (chance(random, 60)) {
    one.items.push_back({"check:hose", chance(random, leans('b')) ? "fail" : "pass"});
  }
  if (chance(random, 5)) one.items.push_back({"check:look", "unclear"});
  if (chance(random, leans('c'))) one.items.push_back({"condition:uphill", "present"});
  if (chance(random, 70)) {
    one.groups.insert("scanned");
    if (chance(random, leans('a'))) one.items.push_back({"code:P0299", "present"});
    if (chance(random, leans('b'))) one.items.push_back({"code:P0301", "present"});
  }
  if (chance(random, 60)) {
    one.groups.insert("work_looked_for");
    for (const char* sign : {"work_sign:tape", "work_sign:clip"}) {
      if (chance(random, leans('c'))) one.items.push_back({sign, "present"});
    }
  }
  one.items.push_back({"mileage_band", chance(random, 50) ? "50" : "100"});
  return one;
}

std::vector<PlainCase> drawn_cases(std::mt19937_64& random, int count) {
  std::vector<PlainCase> cases;
  for (int i = 0; i < count; ++i) cases.push_back(drawn(random));
  return cases;
}

// The obvious way: nothing is shared between one table and the next.
class Plainly {
 public:
  Plainly(const std::vector<PlainCase>& cases, bool signs) : cases_(cases), signs_(signs) {
    const Items vehicle{{"", ""},
                        {"make", "arlune"},
                        {"make", "brackwater"},
                        {"engine_family", "al20d"},
                        {"engine_family", "bw16d"}};
    for (const EvidenceItem& scope : vehicle) {
      if (!scope.attribute.empty()) test_scope_itself(scope);
      for_each_set(scope);
    }
  }
  [[nodiscard]] const Tests& tests() const { return tests_; }

 private:
  static Items candidates() {
    return {{"check:hose", "fail"},          {"check:hose", "pass"},
            {"code:P0299", "present"},       {"code:P0301", "present"},
            {"condition:uphill", "present"}, {"mileage_band", "100"},
            {"mileage_band", "50"},          {"symptom:whistle", "absent"},
            {"symptom:whistle", "present"},  {"work_sign:clip", "present"},
            {"work_sign:tape", "present"}};
  }

  std::vector<std::string> outcomes() const {
    return signs_ ? std::vector<std::string>{"work_sign:clip", "work_sign:tape"}
                  : std::vector<std::string>{"a:x", "b:x", "c:y"};
  }

  bool knows_outcome(const PlainCase& each) const {
    return !signs_ || each.groups.contains("work_looked_for");
  }

  bool has(const PlainCase& each, const std::string& outcome) const {
    return signs_ ? states(each, {outcome, "present"}) : each.cause == outcome;
  }

  std::uint32_t fewest(const EvidenceItem& scope) const {
    const auto inside = std::count_if(cases_.begin(), cases_.end(), [&](const PlainCase& each) {
      return knows_outcome(each) && (scope.attribute.empty() || states(each, scope));
    });
    return std::max(5U, static_cast<std::uint32_t>((inside + 499) / 500));
  }

  void for_each_set(const EvidenceItem& scope) {
    const Items all = candidates();
    for (std::size_t a = 0; a < all.size(); ++a) {
      test(scope, {all[a]});
      for (std::size_t b = a + 1; b < all.size(); ++b) {
        test(scope, {all[a], all[b]});
        for (std::size_t c = b + 1; c < all.size(); ++c) test(scope, {all[a], all[b], all[c]});
      }
    }
  }

  // A finding that is there, or the mileage by itself.
  static bool is_likeness(const Items& set) {
    const std::set<EvidenceItem> never{{"check:hose", "pass"},
                                       {"symptom:whistle", "absent"},
                                       {"mileage_band", "50"},
                                       {"mileage_band", "100"}};
    if (set.size() == 1 && set.front().attribute == "mileage_band") return true;
    return !std::all_of(set.begin(), set.end(),
                        [&](const EvidenceItem& item) { return never.contains(item); });
  }

  void test(const EvidenceItem& scope, const Items& set) {
    if (!is_likeness(set)) return;
    for (const std::string& outcome : outcomes()) {
      if (std::any_of(set.begin(), set.end(),
                      [&](const EvidenceItem& item) { return item.attribute == outcome; })) {
        continue;
      }
      DiagnosticTable table;
      for (const PlainCase& each : cases_) {
        if (!knows_outcome(each)) continue;
        if (!scope.attribute.empty() && !states(each, scope)) continue;
        const bool all_known = std::all_of(set.begin(), set.end(), [&](const EvidenceItem& item) {
          return knows(each, item.attribute);
        });
        if (!all_known) continue;
        const bool holds = std::all_of(
            set.begin(), set.end(), [&](const EvidenceItem& item) { return states(each, item); });
        add(table, holds, has(each, outcome));
      }
      count({scope, set, outcome}, table, fewest(scope));
    }
  }

  void test_scope_itself(const EvidenceItem& scope) {
    for (const std::string& outcome : outcomes()) {
      DiagnosticTable table;
      for (const PlainCase& each : cases_) {
        if (!knows_outcome(each) || !knows(each, scope.attribute)) continue;
        add(table, states(each, scope), has(each, outcome));
      }
      count({scope, {}, outcome}, table, 5);
    }
  }

  static void add(DiagnosticTable& table, bool holds, bool has_outcome) {
    if (holds) ++(has_outcome ? table.true_positive : table.false_positive);
    if (!holds) ++(has_outcome ? table.false_negative : table.true_negative);
  }

  void count(const Key& key, const DiagnosticTable& table, std::uint32_t least) {
    const std::uint32_t set = table.true_positive + table.false_positive;
    if (set < least || table.with_condition() < least || set == table.cases()) return;
    ++tests_.tested;
    const double expected = 1.0 * set * table.with_condition() / table.cases();
    if (table.true_positive >= least && table.true_positive > expected + 1e-9) {
      tests_.met[key] = table;
    }
  }

  const std::vector<PlainCase>& cases_;
  bool signs_;
  Tests tests_;
};

Tests in_words(const PatternTests& tests, const CaseRows& rows, const CauseTable& causes) {
  Tests words;
  words.tested = tests.tested;
  for (const TestedPattern& met : tests.met) {
    Items set;
    for (const std::uint32_t item : met.items) {
      if (item != kNoItem) set.push_back(rows.items[item]);
    }
    const std::string outcome =
        met.kind == PatternKind::kCause ? causes.key(met.outcome) : rows.signs[met.outcome];
    const Key key{rows.scopes[met.scope].scope, set, outcome};
    EXPECT_FALSE(words.met.contains(key)) << "met twice";
    words.met[key] = met.table;
  }
  return words;
}

class Mining : public ::testing::TestWithParam<std::uint64_t> {};

TEST_P(Mining, EqualsGoingThroughAllCasesForEveryScopeSetAndOutcome) {
  std::cout << "seed " << GetParam() << "\n";
  std::mt19937_64 random(GetParam());
  const auto cases = drawn_cases(random, 120 + static_cast<int>(random() % 80));
  const PlainCounter counter(cases);
  const CaseRows rows = CaseRows::of(counter).value();
  ASSERT_EQ(rows.scopes.size(), 5U);
  const ExactTests exact(rows.cases);
  for (const bool signs : {false, true}) {
    const PatternTests tests = signs ? tests_of_signs(rows, exact) : tests_of_causes(rows, exact);
    const Tests words = in_words(tests, rows, counter.causes());
    const Tests expected = Plainly(cases, signs).tests();
    EXPECT_EQ(words.tested, expected.tested);
    EXPECT_EQ(words.met, expected.met);
    EXPECT_GT(words.met.size(), signs ? 20U : 150U) << "too few to prove anything";
    for (const TestedPattern& met : tests.met) ASSERT_EQ(met.p, exact.fisher_more(met.table));
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, Mining, ::testing::Range(std::uint64_t{1}, std::uint64_t{9}));

TEST(PatternTests, LeastCountIsFiveOrOneInFiveHundred) {
  const std::pair<std::size_t, std::uint32_t> rows[] = {
      {0, 5}, {2'400, 5}, {2'500, 5}, {2'501, 6}, {100'000, 200}, {1'000'000, 2'000}};
  for (const auto& [cases, fewest] : rows) EXPECT_EQ(fewest_in(cases), fewest) << cases;
}

// Near-misses of the margins: with one case less on either side nothing is tested.
TEST(PatternTests, ASetOrAnOutcomeOfFourCasesIsNotTested) {
  const auto tested = [](int with_set, int with_outcome) {
    std::vector<PlainCase> cases;
    for (int i = 0; i < 40; ++i) {
      PlainCase one{i < with_outcome ? "a:x" : "b:x", {}, {"scanned"}};
      if (i < with_set) one.items.push_back({"code:P0299", "present"});
      cases.push_back(one);
    }
    const PlainCounter counter(cases);
    const CaseRows rows = CaseRows::of(counter).value();
    return tests_of_causes(rows, ExactTests(rows.cases)).tested;
  };
  EXPECT_EQ(tested(5, 5), 2U);
  EXPECT_EQ(tested(4, 5), 0U);
  EXPECT_EQ(tested(5, 4), 1U);
}

// Nobody looked: neither with the set nor among the rest.
TEST(PatternTests, UnknownIsInNoCellOfTheTable) {
  std::vector<PlainCase> cases;
  const EvidenceItem code{"code:P0299", "present"};
  add(cases, 8, {"a:x", {code}, {"scanned"}});
  add(cases, 12, {"b:x", {}, {"scanned"}});
  add(cases, 30, {"b:x", {}});
  const PlainCounter counter(cases);
  const CaseRows rows = CaseRows::of(counter).value();
  const auto met = tests_of_causes(rows, ExactTests(rows.cases)).met;
  ASSERT_EQ(met.size(), 1U);
  EXPECT_EQ(met.front().table, (DiagnosticTable{8, 0, 0, 12}));
}

}  // namespace
}  // namespace shoplore::testing
