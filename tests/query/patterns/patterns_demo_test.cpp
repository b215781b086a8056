// What mining finds in invented workshops whose true rates are known, and in ones where there is
// nothing to find.
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <numeric>
#include <set>

#include "query/patterns/pattern_book.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/patterns/drawn_counter.hpp"

namespace shoplore::testing {
namespace {

constexpr std::int64_t kCases = 2'400;
constexpr std::uint64_t kFirstSeed = 101;
constexpr int kWorkshops = 10;

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

// An item that a failure pattern lists with a rate of its own, and the pattern's cause.
struct BuiltIn {
  EvidenceItem item;
  std::string cause;
  friend auto operator<=>(const BuiltIn&, const BuiltIn&) = default;
};

std::set<BuiltIn> built_in(const World& world) {
  std::set<BuiltIn> all;
  for (const FailurePattern& pattern : world.patterns) {
    const std::string cause = std::string(pattern.component) + ":" + std::string(pattern.failure);
    const auto add = [&](const std::string& kind, const std::string& id, const char* value) {
      all.insert({{kind + id, value}, cause});
    };
    const std::pair<const char*, const std::vector<EvidenceRate>*> lists[] = {
        {"symptom:", &pattern.symptoms},
        {"code:", &pattern.codes},
        {"condition:", &pattern.conditions},
        {"work_sign:", &pattern.signs}};
    for (const auto& [kind, rates] : lists) {
      for (const EvidenceRate& rate : *rates) add(kind, std::string(rate.id), "present");
    }
    for (const EvidenceRate& rate : pattern.checks) add("check:", std::string(rate.id), "fail");
    for (const EarlierRate& rate : pattern.earlier) {
      add("earlier_repair:", std::string(rate.fix.action) + " " + std::string(rate.fix.component),
          "present");
    }
  }
  return all;
}

std::uint32_t cases_of(const CountQuestion& question, const std::string& cause,
                       const CaseCounter& counter) {
  const auto number = counter.causes().find(cause);
  return number ? counter.by_cause(question).value()[*number] : 0;
}

std::uint32_t cases_of(const CountQuestion& question, const CaseCounter& counter) {
  const auto counts = counter.by_cause(question).value();
  return std::accumulate(counts.begin(), counts.end(), 0U);
}

// Above the stated strength: in kCases cases at least kFewestExpected with item and cause are
// expected, and the item is at least kTimes as frequent among the cause's cases in which it is
// known as among the others'. Rates as in many more cases of the same world, counted.
constexpr double kFewestExpected = 12, kTimes = 3;

std::set<BuiltIn> strong(const World& world) {
  constexpr std::int64_t kMany = 40'000;
  const DrawnCounter many = drawn_counter(world, words(), kMany, 1);
  std::set<BuiltIn> out;
  for (const BuiltIn& each : built_in(world)) {
    const CountQuestion with{{each.item}, {}, {}}, known{{}, {}, {each.item.attribute}};
    const double both = cases_of(with, each.cause, many);
    const double known_with = cases_of(known, each.cause, many);
    const double others = cases_of(with, many) - both;
    const double known_others = cases_of(known, many) - known_with;
    if (both * kCases / kMany < kFewestExpected || known_others == 0) continue;
    if (both / known_with >= kTimes * others / known_others) out.insert(each);
  }
  return out;
}

std::set<BuiltIn> found_in(const DrawnCounter& counter) {
  const auto book = PatternBook::mine(counter, words()).value();
  std::set<BuiltIn> found;
  const PatternList list = book.choose({}, counter, words()).value();
  for (const Pattern& each : list.patterns) {
    const bool single = each.kind == PatternKind::kCause && each.items.size() == 1;
    if (single && each.scope.attribute.empty()) found.insert({each.items.front(), each.cause});
  }
  return found;
}

TEST(PatternsDemo, NineteenOfTwentyStrongBuiltInPatternsAreFound) {
  const World world = demo_world();
  const std::set<BuiltIn> wanted = strong(world);
  EXPECT_GT(wanted.size(), 100U) << "too few to prove anything";
  std::size_t found = 0;
  for (int i = 0; i < kWorkshops; ++i) {
    const std::uint64_t seed = kFirstSeed + static_cast<std::uint64_t>(i);
    const auto there = found_in(drawn_counter(world, words(), kCases, seed));
    const auto here = static_cast<std::size_t>(std::count_if(
        wanted.begin(), wanted.end(), [&](const BuiltIn& each) { return there.contains(each); }));
    std::cout << "seed " << seed << ": " << here << " of " << wanted.size() << "\n";
    found += here;
  }
  EXPECT_GE(static_cast<double>(found), 0.95 * kWorkshops * static_cast<double>(wanted.size()));
}

// False share of a workshop: V / max(R, 1), with R the patterns found that name a cause and V those
// of them that are false. With the causes dealt out anew all of them are.
TEST(PatternsDemo, WithCausesShuffledHardlyAnythingIsFound) {
  const World world = demo_world();
  double false_share = 0;
  for (int i = 0; i < kWorkshops; ++i) {
    const std::uint64_t seed = kFirstSeed + static_cast<std::uint64_t>(i);
    DrawnCounter counter = drawn_counter(world, words(), kCases, seed);
    counter.shuffle_causes(seed);
    const auto book = PatternBook::mine(counter, words()).value();
    const auto found = static_cast<double>(book.count(PatternKind::kCause).found);
    std::cout << "seed " << seed << ": " << found << " found of "
              << book.count(PatternKind::kCause).tested << " tested\n";
    false_share += found / std::max(found, 1.0) / kWorkshops;
  }
  EXPECT_LE(false_share, 0.06);
}

// Through records, index and ledger: the shares shown are those of the records.
TEST(PatternsDemo, OnTheLedgerEveryPatternOpensToExactlyItsCases) {
  const DemoShop shop;
  const auto book = PatternBook::mine(shop.ledger(), shop.vocabulary()).value();
  const auto list = book.choose({}, shop.ledger(), shop.vocabulary()).value();
  ASSERT_GT(list.patterns.size(), 300U);
  std::set<PatternKind> kinds;
  for (std::size_t i = 0; i < list.patterns.size(); i += i < 300 ? 1 : 7) {
    const Pattern& pattern = list.patterns[i];
    kinds.insert(pattern.kind);
    EXPECT_EQ(shoplore::cases_of(pattern, shop.ledger())->size(), pattern.share.count);
    if (pattern.kind == PatternKind::kPassed) continue;
    CountQuestion question{pattern.items, {}, {}};
    if (!pattern.scope.attribute.empty()) question.all_of.push_back(pattern.scope);
    if (pattern.kind == PatternKind::kWorkSign) question.known.push_back(pattern.sign);
    EXPECT_EQ(cases_of(question, shop.ledger()), pattern.share.out_of);
  }
  EXPECT_TRUE(kinds.contains(PatternKind::kCause) && kinds.contains(PatternKind::kInVain));
  const auto opened =
      shoplore::opened({list.patterns.front()}, shop.ledger(), shop.records().store());
  ASSERT_TRUE(opened);
  EXPECT_EQ(opened->front().refs.size(), list.patterns.front().share.count);
  EXPECT_LE(opened->front().vehicles, opened->front().refs.size());
}

}  // namespace
}  // namespace shoplore::testing
