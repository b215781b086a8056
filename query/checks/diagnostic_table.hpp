// How well a test tells a condition: sensitivity, specificity, likelihood ratios, of one 2x2 table.
//
// In a workshop the test is a check, positive is "fail", and the condition is a cause on a part
// that the check tells about; nothing here knows of that. Shares are intervals.hpp's: Jeffreys at
// the shown confidence. Ratios have an interval by the normal approximation on the log scale:
//   LR+ : se^2 = 1/TP - 1/(TP+FN) + 1/FP - 1/(FP+TN)   (Simel, Samsa & Matchar, J Clin Epidemiol
//   LR- : se^2 = 1/FN - 1/(TP+FN) + 1/TN - 1/(FP+TN)    44, 1991; Katz et al., Biometrics 34, 1978)
//   odds ratio : se^2 = 1/TP + 1/FP + 1/FN + 1/TN      (Woolf, Ann Hum Genet 19, 1955)
// Where a count that a ratio divides by or takes the log of is 0, the ratio and its interval are
// those of the table with 1/2 added to all four cells (Haldane 1956; Anscombe 1956), and say so.
// What the table knows nothing of is no value: no LR without a case with and one without the
// condition. PPV and NPV hold only where the condition is as common as in the table.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "query/share.hpp"

namespace shoplore {

// Cases by condition (true: present where positive) and test.
struct DiagnosticTable {
  std::uint32_t true_positive = 0, false_positive = 0, false_negative = 0, true_negative = 0;
  [[nodiscard]] std::uint32_t with_condition() const { return true_positive + false_negative; }
  [[nodiscard]] std::uint32_t without_condition() const { return false_positive + true_negative; }
  [[nodiscard]] std::uint32_t cases() const { return with_condition() + without_condition(); }
  friend bool operator==(const DiagnosticTable&, const DiagnosticTable&) = default;
};

// Above 0; low <= value <= high.
struct Ratio {
  double value = 1, low = 1, high = 1;
  bool half_added = false;  // some count was 0: rests on 1/2 added to every cell
};

struct DiagnosticAccuracy {
  Share sensitivity;                    // positive, of those with the condition
  Share specificity;                    // negative, of those without
  Share positive_value;                 // PPV: with the condition, of the positive
  Share negative_value;                 // NPV: without it, of the negative
  std::optional<Ratio> positive_ratio;  // LR+: what "positive" does to the odds of the condition
  std::optional<Ratio> negative_ratio;  // LR-: what "negative" does
  std::optional<Ratio> odds_ratio;      // LR+ / LR-
};

[[nodiscard]] DiagnosticAccuracy accuracy_of(const DiagnosticTable& table,
                                             double confidence = kShownConfidence);

// One band of a reading, or one value of a test with several: cases with and without the condition.
struct TestLevel {
  std::uint32_t with_condition = 0, without_condition = 0;
};

// Likelihood ratio of each level, (its share of those with) / (its share of those without the
// condition), as LR+ of "this level or not"; none of a level without any case.
[[nodiscard]] std::vector<std::optional<Ratio>> level_ratios(const std::vector<TestLevel>& levels,
                                                             double confidence = kShownConfidence);

// Probability after a finding of that likelihood ratio: odds times ratio (Bayes).
// Requires: 0 <= before <= 1, ratio > 0.
[[nodiscard]] double probability_after(double before, double likelihood_ratio);

}  // namespace shoplore
