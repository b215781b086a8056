// What the records lead to expect of every question that can still be asked: how often each cause's
// cases gave each answer.
//
// Questions are checks (pass or fail; "unclear" is no answer, "mixed" counts as a fail), symptoms
// (present or absent) and facts the shop declares. Rates are smoothed toward the rate over all
// cases, as in the ranking (cause_columns.hpp): a check never done on a cause is expected to answer
// there as everywhere, and so tells nothing about it.
// Plain values once made. Errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "query/case_counter.hpp"

namespace shoplore {

struct AnswerRates {
  std::string attribute;             // "check:plug_well_look", "symptom:whistle", "fact:duty"
  std::vector<std::string> answers;  // their values
  // [answer][CauseNumber], adding to 1 over the answers; one more at the end for causes that the
  // records lack.
  std::vector<std::vector<double>> rates;
  double answerable = 1;    // share of cases where asking gave an answer
  std::uint32_t asked = 0;  // cases
};

// Of everything that was asked in at least this many cases; fewer tell nothing.
inline constexpr std::uint32_t kFewestAsked = 5;

// Sorted by attribute. `smoothing` in cases.
[[nodiscard]] Result<std::vector<AnswerRates>> answer_rates(const CaseCounter& counter,
                                                            double smoothing);

}  // namespace shoplore
