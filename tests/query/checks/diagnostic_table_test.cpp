// Identities and edges of diagnostic tables; published figures are in tests/outside.
#include "query/checks/diagnostic_table.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace shoplore {
namespace {

TEST(DiagnosticTable, WithoutBothColumnsThereIsNoRatio) {
  const struct {
    const char* name;
    DiagnosticTable table;
    bool ratios;
  } rows[] = {{"nothing", {0, 0, 0, 0}, false},
              {"only with the condition", {5, 0, 3, 0}, false},
              {"only without it", {0, 5, 0, 3}, false},
              {"one of each", {1, 0, 0, 1}, true}};
  for (const auto& row : rows) {
    const DiagnosticAccuracy a = accuracy_of(row.table);
    EXPECT_EQ(a.positive_ratio.has_value(), row.ratios) << row.name;
    EXPECT_EQ(a.negative_ratio.has_value(), row.ratios) << row.name;
    EXPECT_EQ(a.odds_ratio.has_value(), row.ratios) << row.name;
  }
  EXPECT_EQ(accuracy_of({5, 0, 3, 0}).specificity.interval, (Interval{0, 1}));
}

// By hand: 10, 0, 2, 8 with halves is 10.5, .5, 2.5, 8.5; LR+ = (10.5/13)/(.5/9), odds ratio
// 10.5 * 8.5 / (.5 * 2.5); LR- needs no half: (2/12)/(8/8).
TEST(DiagnosticTable, AZeroCountTakesHalvesOnlyWhereItIsDividedBy) {
  const DiagnosticAccuracy a = accuracy_of({10, 0, 2, 8});
  EXPECT_TRUE(a.positive_ratio->half_added);
  EXPECT_NEAR(a.positive_ratio->value, (10.5 / 13) / (0.5 / 9), 1e-12);
  EXPECT_FALSE(a.negative_ratio->half_added);
  EXPECT_NEAR(a.negative_ratio->value, 2.0 / 12, 1e-12);
  EXPECT_TRUE(a.odds_ratio->half_added);
  EXPECT_NEAR(a.odds_ratio->value, 10.5 * 8.5 / (0.5 * 2.5), 1e-12);
}

// Over every small table: the ratio of the ratios is the odds ratio where nothing is 0; the
// interval is symmetric on the log scale; swapping the test's answers turns the ratios round.
TEST(DiagnosticTable, RatiosHoldTogether) {
  for (std::uint32_t n = 0; n < 256; ++n) {
    const DiagnosticTable table{n % 4, n / 4 % 4, n / 16 % 4, n / 64};
    const DiagnosticAccuracy a = accuracy_of(table);
    if (!a.positive_ratio) continue;
    for (const Ratio& ratio : {*a.positive_ratio, *a.negative_ratio, *a.odds_ratio}) {
      EXPECT_GT(ratio.low, 0) << n;
      EXPECT_LE(ratio.low, ratio.value) << n;
      EXPECT_NEAR(ratio.low * ratio.high, ratio.value * ratio.value,
                  1e-9 * ratio.value * ratio.value)
          << n;
    }
    if (!a.odds_ratio->half_added) {
      EXPECT_NEAR(a.positive_ratio->value / a.negative_ratio->value, a.odds_ratio->value, 1e-9);
    }
    const DiagnosticAccuracy turned = accuracy_of(
        {table.false_negative, table.true_negative, table.true_positive, table.false_positive});
    EXPECT_NEAR(turned.positive_ratio->value, a.negative_ratio->value, 1e-12) << n;
    EXPECT_NEAR(turned.negative_ratio->high, a.positive_ratio->high, 1e-9) << n;
  }
}

TEST(DiagnosticTable, TwoLevelsAreTheTableItself) {
  const DiagnosticAccuracy a = accuracy_of({9, 4, 3, 11});
  const auto ratios = level_ratios({{9, 4}, {3, 11}});
  EXPECT_NEAR(ratios[0]->value, a.positive_ratio->value, 1e-12);
  EXPECT_NEAR(ratios[0]->high, a.positive_ratio->high, 1e-12);
  EXPECT_NEAR(ratios[1]->value, a.negative_ratio->value, 1e-12);
  EXPECT_NEAR(ratios[1]->low, a.negative_ratio->low, 1e-12);
}

TEST(DiagnosticTable, ALevelNobodyHadSaysNothing) {
  const auto ratios = level_ratios({{9, 4}, {0, 0}, {3, 0}});
  EXPECT_TRUE(ratios[0]);
  EXPECT_FALSE(ratios[1]);
  EXPECT_TRUE(ratios[2]->half_added);
  EXPECT_FALSE(level_ratios({{9, 0}})[0]) << "no case without the condition";
  EXPECT_TRUE(level_ratios({}).empty());
}

// PPV is what Bayes makes of the prevalence and LR+, NPV of LR-.
TEST(DiagnosticTable, PredictiveValuesAreTheProbabilityAfterInTheTableItself) {
  const DiagnosticTable table{9, 4, 3, 11};
  const DiagnosticAccuracy a = accuracy_of(table);
  const double before = 12.0 / 27;
  EXPECT_NEAR(probability_after(before, a.positive_ratio->value), 9.0 / 13, 1e-12);
  EXPECT_NEAR(1 - probability_after(before, a.negative_ratio->value), 11.0 / 14, 1e-12);
  EXPECT_EQ(probability_after(0, 50), 0);
  EXPECT_EQ(probability_after(1, 0.02), 1);
}

}  // namespace
}  // namespace shoplore
