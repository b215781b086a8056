#include "query/checks/diagnostic_table.hpp"

#include <cassert>
#include <cmath>

namespace shoplore {
namespace {

// The four cells as they enter a ratio.
struct Cells {
  double tp = 0, fp = 0, fn = 0, tn = 0;
  double with() const { return tp + fn; }
  double without() const { return fp + tn; }
};

Cells cells_of(const DiagnosticTable& table, double added) {
  return {table.true_positive + added, table.false_positive + added, table.false_negative + added,
          table.true_negative + added};
}

Ratio on_log_scale(double value, double variance, double confidence, bool half_added) {
  const double reach = std::exp(two_sided_z(confidence) * std::sqrt(variance));
  return {value, value / reach, value * reach, half_added};
}

// LR of one answer of the test; `with` and `without` are the cases that gave it. An answer that
// every case of a column gave has no spread there: its term is 0.
Ratio likelihood_ratio(double with, double all_with, double without, double all_without,
                       double confidence, bool half_added) {
  const double variance = 1 / with - 1 / all_with + 1 / without - 1 / all_without;
  return on_log_scale((with / all_with) / (without / all_without), variance, confidence,
                      half_added);
}

bool tells_of_both(const DiagnosticTable& table) {
  return table.with_condition() > 0 && table.without_condition() > 0;
}

std::optional<Ratio> positive_ratio(const DiagnosticTable& table, double confidence) {
  if (!tells_of_both(table)) return std::nullopt;
  const bool half = table.true_positive == 0 || table.false_positive == 0;
  const Cells c = cells_of(table, half ? 0.5 : 0);
  return likelihood_ratio(c.tp, c.with(), c.fp, c.without(), confidence, half);
}

std::optional<Ratio> negative_ratio(const DiagnosticTable& table, double confidence) {
  if (!tells_of_both(table)) return std::nullopt;
  const bool half = table.false_negative == 0 || table.true_negative == 0;
  const Cells c = cells_of(table, half ? 0.5 : 0);
  return likelihood_ratio(c.fn, c.with(), c.tn, c.without(), confidence, half);
}

std::optional<Ratio> odds_ratio(const DiagnosticTable& table, double confidence) {
  if (!tells_of_both(table)) return std::nullopt;
  const bool half = table.true_positive == 0 || table.false_positive == 0 ||
                    table.false_negative == 0 || table.true_negative == 0;
  const Cells c = cells_of(table, half ? 0.5 : 0);
  const double variance = 1 / c.tp + 1 / c.fp + 1 / c.fn + 1 / c.tn;
  return on_log_scale(c.tp * c.tn / (c.fp * c.fn), variance, confidence, half);
}

}  // namespace

DiagnosticAccuracy accuracy_of(const DiagnosticTable& table, double confidence) {
  const auto share = [&](std::uint32_t count, std::uint32_t out_of) {
    return Share{count, out_of, jeffreys(count, out_of, confidence)};
  };
  DiagnosticAccuracy accuracy;
  accuracy.sensitivity = share(table.true_positive, table.with_condition());
  accuracy.specificity = share(table.true_negative, table.without_condition());
  accuracy.positive_value = share(table.true_positive, table.true_positive + table.false_positive);
  accuracy.negative_value = share(table.true_negative, table.true_negative + table.false_negative);
  accuracy.positive_ratio = positive_ratio(table, confidence);
  accuracy.negative_ratio = negative_ratio(table, confidence);
  accuracy.odds_ratio = odds_ratio(table, confidence);
  return accuracy;
}

std::vector<std::optional<Ratio>> level_ratios(const std::vector<TestLevel>& levels,
                                               double confidence) {
  TestLevel all;
  for (const TestLevel& level : levels) {
    all.with_condition += level.with_condition;
    all.without_condition += level.without_condition;
  }
  std::vector<std::optional<Ratio>> ratios;
  for (const TestLevel& level : levels) {
    const bool empty = level.with_condition == 0 && level.without_condition == 0;
    const DiagnosticTable table{level.with_condition, level.without_condition,
                                all.with_condition - level.with_condition,
                                all.without_condition - level.without_condition};
    ratios.push_back(empty ? std::nullopt : positive_ratio(table, confidence));
  }
  return ratios;
}

double probability_after(double before, double likelihood_ratio) {
  assert(before >= 0 && before <= 1 && likelihood_ratio > 0);
  const double with = before * likelihood_ratio;
  return with / (with + (1 - before));
}

}  // namespace shoplore
