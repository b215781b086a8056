// Trust in checks on the demo: against brute force over its records, and against the rates by
// which its checks mislead.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
#include <map>
#include <random>
#include <set>

#include "query/checks/trust_by_condition.hpp"
#include "query/index_counter.hpp"
#include "tests/query/coverage.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore {
namespace {

using testing::Coverage;
using testing::fewest_covered;

constexpr std::uint64_t kSeed = 20'260'302;

// A demo shop with its trust in checks. All claims only read.
struct Shop {
  const testing::DemoShop shop;
  std::vector<Case> closed;
  std::map<std::string, CheckTrust, std::less<>> trust;

  explicit Shop(std::int64_t cases) : shop(cases, testing::Showcases::kOut) {
    for (const auto& each : shop.closed()) closed.push_back(each.drawn.record);
    const auto all = trust_in_checks(shop.ledger(), words()).value();
    for (const CheckTrust& each : all) {
      trust.emplace(each.check, each);
    }
  }

  const Vocabulary& words() const { return shop.vocabulary(); }

  // What is known of the check on the cause; null when it was never clear there.
  const CauseTrust* row(const std::string& check, const std::string& cause) const {
    const auto found = trust.find(check);
    if (found == trust.end()) return nullptr;
    for (const CauseTrust& each : found->second.by_cause) {
      if (each.cause == cause) return &each;
    }
    return nullptr;
  }
};

// As large as the demo is, and one of five times the cases, where rarely done checks show too.
const Shop& demo() {
  static const Shop shop(2'400);
  return shop;
}
const Shop& long_kept_demo() {
  static const Shop shop(12'000);
  return shop;
}

bool tells(const Entry& entry, std::string_view component) {
  return std::find(entry.components.begin(), entry.components.end(), component) !=
         entry.components.end();
}

// Read from the records' own fields; the demo does no check twice in a case.
struct PlainTrust {
  std::uint32_t done = 0, unclear = 0, fail_told = 0, fail_other = 0, pass_told = 0, pass_other = 0,
                pass_misled = 0, fail_misled = 0;
};

PlainTrust count_plainly(const std::vector<Case>& cases, const Entry& entry) {
  PlainTrust counts;
  for (const Case& record : cases) {
    for (const Check& check : record.checks) {
      if (check.id != entry.id) continue;
      ++counts.done;
      const bool told = tells(entry, record.cause->component);
      const bool misled = check.later == Later::kMisled;
      if (check.verdict == Verdict::kUnclear) ++counts.unclear;
      if (check.verdict == Verdict::kFail) {
        ++(told ? counts.fail_told : counts.fail_other);
        counts.fail_misled += misled ? 1 : 0;
      }
      if (check.verdict == Verdict::kPass) {
        ++(told ? counts.pass_told : counts.pass_other);
        counts.pass_misled += misled ? 1 : 0;
      }
    }
  }
  return counts;
}

TEST(CheckTrustDemo, AgreesWithBruteForceOverTheRecords) {
  std::cout << "seed " << kSeed << "\n";
  std::mt19937_64 random(kSeed);
  const Shop& shop = demo();
  std::vector<std::string> ids;
  for (const auto& [id, trust] : shop.trust) ids.push_back(id);
  std::shuffle(ids.begin(), ids.end(), random);
  ids.resize(40);
  for (const std::string& id : ids) {
    SCOPED_TRACE(id);
    const Entry& entry = *shop.words().find(EntryKind::kCheck, id);
    const PlainTrust plain = count_plainly(shop.closed, entry);
    const CheckTrust& trust = shop.trust.find(id)->second;
    EXPECT_EQ(trust.done, plain.done);
    EXPECT_EQ(trust.unclear, plain.unclear);
    EXPECT_EQ(trust.pass.given, plain.pass_told + plain.pass_other);
    EXPECT_EQ(trust.fail.given, plain.fail_told + plain.fail_other);
    EXPECT_EQ(trust.pass.misled, plain.pass_misled);
    EXPECT_EQ(trust.fail.misled, plain.fail_misled);
    if (entry.components.empty()) continue;
    EXPECT_EQ(trust.table, (DiagnosticTable{plain.fail_told, plain.fail_other, plain.pass_told,
                                            plain.pass_other}));
    EXPECT_EQ(trust.pass.borne_out, plain.pass_other);
    EXPECT_EQ(trust.fail.borne_out, plain.fail_told);
  }
}

TEST(CheckTrustDemo, LedgerAndIndexSayTheSame) {
  const Shop& shop = demo();
  const auto used = shop.shop.snapshot().with_index([&](Xapian::Database& index) -> Result<void> {
    const IndexCounter counter(index, shop.shop.ledger().causes());
    for (const char* id : {"plug_well_look", "misfire_counter", "visual_inspection"}) {
      const CheckTrust slow = trust_of(counter, id, shop.words()).value();
      const CheckTrust& fast = shop.trust.find(id)->second;
      EXPECT_EQ(slow.table, fast.table) << id;
      EXPECT_EQ(slow.done, fast.done) << id;
      EXPECT_EQ(slow.pass.misled, fast.pass.misled) << id;
      EXPECT_EQ(slow.fail.unknown, fast.fail.unknown) << id;
    }
    return {};
  });
  EXPECT_TRUE(used);
}

// Conditions are in the bodies only.
TEST(CheckTrustDemo, ByConditionAgreesWithBruteForceOverTheRecords) {
  std::map<std::pair<std::string, std::string>, std::array<std::uint32_t, 5>> plain;
  for (const Case& record : demo().closed) {
    for (const Check& check : record.checks) {
      std::set<std::string> under(check.conditions.begin(), check.conditions.end());
      if (under.empty()) under.insert("");
      for (const std::string& condition : under) {
        auto& counts = plain[{check.id, condition}];
        const bool misled = check.later == Later::kMisled;
        if (check.verdict == Verdict::kPass) ++counts[0], counts[1] += misled ? 1 : 0;
        if (check.verdict == Verdict::kFail) ++counts[2], counts[3] += misled ? 1 : 0;
        if (check.verdict == Verdict::kUnclear) ++counts[4];
      }
    }
  }
  const auto rows = trust_by_condition(demo().shop.records().store(), demo().words()).value();
  ASSERT_EQ(rows.size(), plain.size());
  std::uint32_t under_a_condition = 0;
  for (const ConditionTrust& row : rows) {
    const auto& counts = plain.at({row.check, row.condition});
    const std::array<std::uint32_t, 5> got{row.pass.given, row.pass.misled, row.fail.given,
                                           row.fail.misled, row.unclear};
    EXPECT_EQ(got, counts) << row.check << " " << row.condition;
    if (!row.condition.empty()) under_a_condition += row.done();
  }
  EXPECT_GT(under_a_condition, 50U) << "a demo without conditions proves nothing";
}

// A check of a pattern: the share of its clear verdicts that speak against the cause.
struct ByDesign {
  std::string cause, check;
  bool told_about = false;
  double against = 0;
};

std::vector<ByDesign> designs(const Vocabulary& words) {
  std::vector<ByDesign> all;
  const World world = demo_world();
  for (const FailurePattern& pattern : world.patterns) {
    for (const EvidenceRate& rate : pattern.checks) {
      const Entry& entry = *words.find(EntryKind::kCheck, rate.id);
      if (entry.components.empty()) continue;
      const bool told = tells(entry, pattern.component);
      all.push_back({fmt::format("{}:{}", pattern.component, pattern.failure), entry.id, told,
                     told ? 1 - rate.probability : rate.probability});
    }
  }
  return all;
}

// Misleading by design: at least one clear verdict in four is against the cause.
constexpr double kMisleading = 0.25;

Coverage misleading_checks_covered(const Shop& shop) {
  Coverage coverage;
  for (const ByDesign& design : designs(shop.words())) {
    const CauseTrust* row = shop.row(design.check, design.cause);
    if (design.against < kMisleading || row == nullptr) continue;
    if (row->pass + row->fail < kEnoughToTrust) continue;
    EXPECT_EQ(row->told_about, design.told_about) << design.check;
    coverage.add(row->against, design.against);
    if (Coverage::covers(row->against, design.against)) continue;
    std::cout << fmt::format("  not covered: {} of {}, true {:.2f}, counted {} of {}\n",
                             design.check, design.cause, design.against, row->against.count,
                             row->against.out_of);
  }
  std::cout << fmt::format("{} checks mislead by design, {} covered at 90 %\n", coverage.reported,
                           coverage.covered);
  return coverage;
}

TEST(CheckTrustDemo, ChecksThatMisleadByDesignAreReportedAtTheirTrueRate) {
  const Coverage coverage = misleading_checks_covered(demo());
  EXPECT_GE(coverage.reported, 20);
  EXPECT_GE(coverage.covered, fewest_covered(coverage.reported));
}

TEST(CheckTrustDemo, AlsoWithNarrowerIntervalsInRecordsKeptForLonger) {
  const Coverage coverage = misleading_checks_covered(long_kept_demo());
  EXPECT_GE(coverage.reported, 50);
  EXPECT_GE(coverage.covered, fewest_covered(coverage.reported));
}

// Every contradiction of the demo is spoken of, so what misled is what was against.
TEST(CheckTrustDemo, WhatWasSaidToMisleadIsWhatTheCauseContradicts) {
  for (const auto& [id, trust] : long_kept_demo().trust) {
    if (!trust.tells_about_components) continue;
    EXPECT_EQ(trust.pass.misled, trust.table.false_negative) << id;
    EXPECT_EQ(trust.fail.misled, trust.table.false_positive) << id;
    EXPECT_EQ(trust.pass.unknown + trust.fail.unknown, 0U) << id;
  }
}

// Sensitivity and specificity mix the causes; the truth mixes their rates by the same cases.
TEST(CheckTrustDemo, SensitivityAndSpecificityCoverTheirTruth) {
  const Shop& shop = long_kept_demo();
  std::map<std::pair<std::string, std::string>, double> fail_rate;
  for (const ByDesign& design : designs(shop.words())) {
    fail_rate[{design.check, design.cause}] =
        design.told_about ? 1 - design.against : design.against;
  }
  Coverage coverage;
  for (const auto& [id, trust] : shop.trust) {
    if (!trust.tells_about_components) continue;
    double told_fails = 0, other_passes = 0;
    for (const CauseTrust& row : trust.by_cause) {
      const auto found = fail_rate.find({id, row.cause});
      const double rate = found == fail_rate.end() ? kStrayCheckFail : found->second;
      (row.told_about ? told_fails : other_passes) +=
          (row.told_about ? rate : 1 - rate) * (row.pass + row.fail);
    }
    const DiagnosticAccuracy accuracy = trust.accuracy();
    const Share &sensitivity = accuracy.sensitivity, &specificity = accuracy.specificity;
    const std::uint32_t enough = kEnoughToTrust;
    if (sensitivity.out_of >= enough) coverage.add(sensitivity, told_fails / sensitivity.out_of);
    if (specificity.out_of >= enough) coverage.add(specificity, other_passes / specificity.out_of);
  }
  std::cout << fmt::format("{} sensitivities and specificities, {} covered at 90 %\n",
                           coverage.reported, coverage.covered);
  EXPECT_GE(coverage.reported, 150);
  EXPECT_GE(coverage.covered, fewest_covered(coverage.reported));
}

// Weight of the finding for the cause, asked alone.
double weight(const Snapshot& snapshot, const std::string& check, const std::string& verdict,
              const std::string& cause) {
  const Ranking ranking = snapshot.ranking().rank({{"check:" + check, verdict}}, Filter{}).value();
  for (const RankedCause& row : ranking.causes) {
    if (snapshot.ledger().causes().key(row.cause) == cause) return row.why.front().weight;
  }
  ADD_FAILURE() << cause << " is not ranked";
  return 0;
}

struct Moves {
  int pairs = 0, less = 0;
};

// Two checks that tell about the same cause, each clear in twelve of its cases: how much a pass of
// the one that misleads moves the cause, and a pass of one that is wrong one time in eight at most.
Moves compare_moves(const Shop& shop) {
  std::vector<ByDesign> all = designs(shop.words());
  std::erase_if(all, [&](const ByDesign& design) {
    const CauseTrust* row = shop.row(design.check, design.cause);
    return !design.told_about || row == nullptr || row->pass + row->fail < 12;
  });
  Moves moves;
  for (const ByDesign& weak : all) {
    for (const ByDesign& strong : all) {
      if (weak.cause != strong.cause) continue;
      if (weak.against < kMisleading || strong.against > 0.125) continue;
      const double by_weak = weight(shop.shop.snapshot(), weak.check, "pass", weak.cause);
      const double by_strong = weight(shop.shop.snapshot(), strong.check, "pass", strong.cause);
      ++moves.pairs;
      moves.less += std::abs(by_weak) < std::abs(by_strong) ? 1 : 0;
      EXPECT_LT(by_strong, 0) << strong.check << " " << strong.cause;
      std::cout << fmt::format("  {:<36} {:<22} {:+.2f}   {:<25} {:+.2f}\n", weak.cause, weak.check,
                               by_weak, strong.check, by_strong);
    }
  }
  return moves;
}

TEST(CheckTrustDemo, AMisleadingPassMovesTheRankingLessThanATrustworthyOne) {
  const Moves moves = compare_moves(demo());
  EXPECT_GE(moves.pairs, 3);
  EXPECT_EQ(moves.less, moves.pairs);
}

TEST(CheckTrustDemo, AlsoOfChecksSeldomDoneInRecordsKeptForLonger) {
  const Moves moves = compare_moves(long_kept_demo());
  EXPECT_GE(moves.pairs, 15);
  EXPECT_EQ(moves.less, moves.pairs);
}

}  // namespace
}  // namespace shoplore
