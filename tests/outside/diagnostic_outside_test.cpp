// Diagnostic tables against published worksheets.
//
// Printed figures are met to half a unit of their last digit; recomputed ones, from the published
// counts by the published formulas in independent software, to the digits given.
#include <gtest/gtest.h>

#include "query/checks/diagnostic_table.hpp"

namespace shoplore {
namespace {

constexpr double kDigits = 5.1e-8;

double value_of(const Share& share) {
  return static_cast<double>(share.count) / share.out_of;
}

void expect_ratio(const std::optional<Ratio>& ratio, double value, double low, double high) {
  ASSERT_TRUE(ratio);
  EXPECT_FALSE(ratio->half_added);
  EXPECT_NEAR(ratio->value, value, kDigits);
  EXPECT_NEAR(ratio->low, low, kDigits);
  EXPECT_NEAR(ratio->high, high, kDigits);
}

// Centre for Evidence-Based Medicine, worksheet on diagnosis (Toronto): serum ferritin for iron
// deficiency anaemia. TP 731, FP 270, FN 78, TN 1500.
constexpr DiagnosticTable kFerritin{731, 270, 78, 1500};

TEST(DiagnosticOutside, FerritinAsPrinted) {
  const DiagnosticAccuracy a = accuracy_of(kFerritin);
  EXPECT_NEAR(value_of(a.sensitivity), 0.90, 0.005);
  EXPECT_NEAR(value_of(a.specificity), 0.85, 0.005);
  EXPECT_NEAR(value_of(a.positive_value), 0.73, 0.005);
  EXPECT_NEAR(value_of(a.negative_value), 0.95, 0.005);
  EXPECT_NEAR(a.positive_ratio->value, 6, 0.5);
  EXPECT_NEAR(a.negative_ratio->value, 0.12, 0.0065);  // 0.1138, printed as 0.12 from rounded parts
  const double prevalence = static_cast<double>(kFerritin.with_condition()) / kFerritin.cases();
  EXPECT_NEAR(prevalence, 0.31, 0.005);
}

// Intervals at 95 %: log method for the ratios.
TEST(DiagnosticOutside, FerritinRecomputed) {
  const DiagnosticAccuracy a = accuracy_of(kFerritin, 0.95);
  EXPECT_NEAR(value_of(a.sensitivity), 0.9035847, kDigits);
  EXPECT_NEAR(value_of(a.specificity), 0.8474576, kDigits);
  EXPECT_NEAR(value_of(a.positive_value), 0.7302697, kDigits);
  EXPECT_NEAR(value_of(a.negative_value), 0.9505703, kDigits);
  expect_ratio(a.positive_ratio, 5.9234995, 5.2953986, 6.6261011);
  expect_ratio(a.negative_ratio, 0.1137701, 0.0920473, 0.1406193);
  ASSERT_TRUE(a.odds_ratio);
  EXPECT_NEAR(a.odds_ratio->value, 52.0655271, kDigits);
}

// The worksheet's shares with Wilson's interval, so that the counts beside them are the right ones.
TEST(DiagnosticOutside, FerritinSharesByWilson) {
  const DiagnosticAccuracy a = accuracy_of(kFerritin);
  const Interval sensitivity = wilson(a.sensitivity.count, a.sensitivity.out_of, 0.95);
  const Interval specificity = wilson(a.specificity.count, a.specificity.out_of, 0.95);
  EXPECT_NEAR(sensitivity.low, 0.881297, 5.1e-7);
  EXPECT_NEAR(sensitivity.high, 0.922058, 5.1e-7);
  EXPECT_NEAR(specificity.low, 0.829956, 5.1e-7);
  EXPECT_NEAR(specificity.high, 0.863454, 5.1e-7);
}

// Liver scan: D. G. Altman & J. M. Bland, "Diagnostic tests 1: sensitivity and specificity", BMJ
// 308 (1994) 1552. Printed sensitivity 231/258 = 0.90, specificity 54/86 = 0.63.
TEST(DiagnosticOutside, LiverScan) {
  const DiagnosticAccuracy a = accuracy_of({231, 32, 27, 54}, 0.95);
  EXPECT_EQ(a.sensitivity.count, 231U);
  EXPECT_EQ(a.sensitivity.out_of, 258U);
  EXPECT_EQ(a.specificity.count, 54U);
  EXPECT_EQ(a.specificity.out_of, 86U);
  EXPECT_NEAR(value_of(a.sensitivity), 0.8953488, kDigits);
  EXPECT_NEAR(value_of(a.specificity), 0.6279070, kDigits);
  EXPECT_NEAR(value_of(a.positive_value), 0.8783270, kDigits);
  EXPECT_NEAR(value_of(a.negative_value), 0.6666667, kDigits);
  expect_ratio(a.positive_ratio, 2.40625, 1.8227906, 3.1764696);
  expect_ratio(a.negative_ratio, 0.1666667, 0.1125897, 0.2467170);
  EXPECT_NEAR(a.odds_ratio->value, 14.4375, kDigits);
}

// Reading a Fagan nomogram, as guideline pages print it: before 50 %, LR 6 gives 86 %; before 2 %
// with sensitivity 90 % and specificity 85 % about 11 %, before 50 % again 86 %.
TEST(DiagnosticOutside, ProbabilityAfterAFinding) {
  EXPECT_NEAR(probability_after(0.50, 6), 0.8571429, kDigits);
  const double ratio = 0.90 / (1 - 0.85);
  EXPECT_NEAR(probability_after(0.02, ratio), 0.1090909, kDigits);
  EXPECT_NEAR(probability_after(0.50, ratio), 0.86, 0.005);
}

// Mammography, prior 1 %: the worked variant of 80 % and 10 % in J. A. Rice, Mathematical
// Statistics and Data Analysis, 3rd ed., gives 0.075.
TEST(DiagnosticOutside, ARareConditionStaysUnlikely) {
  EXPECT_NEAR(probability_after(0.01, 0.80 / 0.10), 0.075, 0.0005);
}

// Multilevel ratios of ferritin: G. H. Guyatt et al., "Diagnosis of iron-deficiency anemia in the
// elderly", Am J Med 88 (1990) 205. Up to 45: 70 of 85 against 15 of 150, LR 8.2; above 100: 8 of
// 85 against 108 of 150, LR 0.13; from 30 to 70 % before to 78-95 % and 5-23 % after. The printed
// ratio of the middle band does not follow from its counts and is left out.
TEST(DiagnosticOutside, FerritinInThreeBands) {
  const auto ratios = level_ratios({{70, 15}, {7, 27}, {8, 108}});
  ASSERT_EQ(ratios.size(), 3U);
  ASSERT_TRUE(ratios[0] && ratios[2]);
  EXPECT_NEAR(ratios[0]->value, 8.2, 0.05);
  EXPECT_NEAR(ratios[0]->value, 8.2352941, kDigits);
  EXPECT_NEAR(ratios[2]->value, 0.13, 0.005);
  EXPECT_NEAR(ratios[2]->value, 0.1307190, kDigits);
  EXPECT_NEAR(probability_after(0.30, 8.2), 0.78, 0.005);
  EXPECT_NEAR(probability_after(0.70, 8.2), 0.95, 0.005);
  EXPECT_NEAR(probability_after(0.30, 0.13), 0.05, 0.005);
  EXPECT_NEAR(probability_after(0.70, 0.13), 0.23, 0.005);
}

}  // namespace
}  // namespace shoplore
