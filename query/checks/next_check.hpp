// Which check to do next: the one expected to tell most about the cause for the fewest minutes.
//
// For every check not done yet: expected information (expected_information.hpp) under the
// probabilities of the ranking and the rates of the records (verdict_rates.hpp), times the share of
// cases where it gave an answer, over its minutes, in which every removal that is still on counts
// once and one that is off not at all. Questions to the customer cost next to nothing and are
// listed apart, so that they never crowd out the checks. Looks one step ahead only. Nothing is
// proposed that was never asked about with any of the findings present: where no cause stands out,
// whatever tells some rare one apart would come first.
// Threads and errors: the counter's.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "query/checks/verdict_rates.hpp"
#include "query/checks/work_figures.hpp"
#include "query/ranking/ranking_model.hpp"

namespace shoplore {

// What an answer would leave: how likely it is, and the leading causes then, by Bayes' rule from
// the same rates as its information, so that over all answers they add up to what is said now. Once
// recorded it enters the ranking, which weighs it with all the rest.
struct Outlook {
  std::string answer;
  double probability = 0;
  std::vector<std::pair<CauseNumber, double>> leading;  // up to kLeading, by probability
};
inline constexpr std::size_t kLeading = 3;

struct CheckChoice {
  std::string attribute;              // "check:plug_well_look"
  double information = 0;             // bits expected
  double answerable = 1;              // share of cases where it gave an answer
  double minutes = 0;                 // of its own
  std::vector<std::string> removals;  // that are still on
  double removal_minutes = 0;         // of those
  double per_minute = 0;              // bits x answerable / (all minutes)
  std::vector<Outlook> outlooks;      // by answer; only of those chosen
};

struct NextChecks {
  std::vector<CheckChoice> checks;     // best first
  std::vector<CheckChoice> questions;  // to the customer or by eye, best first
};

// What is known of the vehicle on the ramp besides the evidence.
struct WorkSoFar {
  std::set<std::string> open;          // removals that are off
  std::set<std::string> not_possible;  // check ids that cannot be done here today
};

// What choosing needs besides the question.
struct CheckBasis {
  const std::vector<AnswerRates>& rates;
  const WorkFigures& figures;
  const Vocabulary& vocabulary;
};

inline constexpr std::size_t kChecksShown = 3, kQuestionsShown = 2;
// A question takes as long as asking it; nothing is free, or it would be worth infinitely much.
inline constexpr double kQuestionMinutes = 1;
// Cases with a finding of the question in which it was asked, to be proposed at all.
inline constexpr std::uint32_t kFewestRelated = 3;
// Bits; less than this is not worth a line.
inline constexpr double kLeastInformation = 0.02;

// What doing a check takes.
struct CheckWork {
  double minutes = 0;                 // of its own
  std::vector<std::string> removals;  // ids, that are still on
  double removal_minutes = 0;         // of those
};
[[nodiscard]] CheckWork work_of_check(std::string_view check, const WorkSoFar& so_far,
                                      const CheckBasis& basis);

// Sorted by per_minute, without outlooks. `causes` by CauseNumber, one more at the end for causes
// that the records lack. Attributes of `items` are known and not asked again.
[[nodiscard]] NextChecks rate_checks(const std::vector<double>& causes,
                                     const std::vector<EvidenceItem>& items,
                                     const WorkSoFar& so_far, const CheckBasis& basis);

// The best of them with what each answer would leave.
[[nodiscard]] Result<NextChecks> next_checks(const Ranking& ranking,
                                             const std::vector<EvidenceItem>& items,
                                             const CaseCounter& counter, const WorkSoFar& so_far,
                                             const CheckBasis& basis);

// How likely each cause is once the question has that answer.
[[nodiscard]] std::vector<double> causes_after(const std::vector<double>& causes,
                                               const std::vector<double>& rates);

// A ranking's probabilities by CauseNumber, "not in these records" last.
[[nodiscard]] std::vector<double> probabilities_by_cause(const Ranking& ranking,
                                                         std::size_t causes);

}  // namespace shoplore
