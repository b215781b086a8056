#include "query/checks/next_check.hpp"

#include <algorithm>
#include <numeric>

#include "query/checks/expected_information.hpp"

namespace shoplore {
namespace {

bool is_check(std::string_view attribute) {
  return attribute.starts_with("check:");
}

bool is_known(const std::vector<EvidenceItem>& items, const std::string& attribute) {
  return std::any_of(items.begin(), items.end(),
                     [&](const EvidenceItem& item) { return item.attribute == attribute; });
}

// A word of the vocabulary that is no longer offered is not proposed either.
bool is_offered(const std::string& attribute, const WorkSoFar& so_far,
                const Vocabulary& vocabulary) {
  if (!is_check(attribute)) return true;
  const std::string id(id_of_attribute(attribute));
  if (so_far.not_possible.contains(id)) return false;
  const Entry* entry = vocabulary.find(EntryKind::kCheck, id);
  return entry == nullptr || entry->retired.empty();
}

void set_minutes(CheckChoice& choice, const WorkSoFar& so_far, const CheckBasis& basis) {
  if (!is_check(choice.attribute)) {
    choice.minutes = kQuestionMinutes;
    return;
  }
  CheckWork work = work_of_check(id_of_attribute(choice.attribute), so_far, basis);
  choice.minutes = work.minutes;
  choice.removals = std::move(work.removals);
  choice.removal_minutes = work.removal_minutes;
}

void sort_by_worth(std::vector<CheckChoice>& choices) {
  std::stable_sort(choices.begin(), choices.end(),
                   [](const auto& a, const auto& b) { return a.per_minute > b.per_minute; });
}

void look_ahead(CheckChoice& choice, const std::vector<double>& causes,
                const std::vector<AnswerRates>& all_rates) {
  const auto rates = std::find_if(all_rates.begin(), all_rates.end(), [&](const auto& each) {
    return each.attribute == choice.attribute;
  });
  const auto shares = answer_shares(causes, rates->rates);
  for (std::size_t a = 0; a < rates->answers.size(); ++a) {
    Outlook outlook{rates->answers[a], shares[a], {}};
    const auto after = causes_after(causes, rates->rates[a]);
    // Without the last, which is no cause anybody could name.
    for (CauseNumber c = 0; c + 1 < after.size(); ++c) outlook.leading.emplace_back(c, after[c]);
    const auto shown = std::min(kLeading, outlook.leading.size());
    std::partial_sort(
        outlook.leading.begin(), outlook.leading.begin() + static_cast<std::ptrdiff_t>(shown),
        outlook.leading.end(), [](const auto& x, const auto& y) { return x.second > y.second; });
    outlook.leading.resize(shown);
    choice.outlooks.push_back(std::move(outlook));
  }
}

// Findings that something is there; what is not there goes with nearly everything.
std::vector<EvidenceItem> finds_in(const std::vector<EvidenceItem>& items) {
  std::vector<EvidenceItem> finds;
  for (const EvidenceItem& item : items) {
    const bool tells = item.attribute.starts_with("symptom:") ||
                       item.attribute.starts_with("code:") || is_check(item.attribute);
    if (tells && item.value != "absent") finds.push_back(item);
  }
  return finds;
}

Result<bool> is_related(const std::string& attribute, const std::vector<EvidenceItem>& finds,
                        const CaseCounter& counter) {
  if (finds.empty()) return true;
  std::uint32_t cases = 0;
  for (const EvidenceItem& find : finds) {
    const auto counts = counter.by_cause({{find}, {}, {attribute}});
    if (!counts) return fail(counts.error());
    cases += std::accumulate(counts->begin(), counts->end(), 0U);
  }
  return cases >= kFewestRelated;
}

// The best of them that are related, at most so many.
Result<std::vector<CheckChoice>> best_of(std::vector<CheckChoice> choices, std::size_t most,
                                         const std::vector<EvidenceItem>& finds,
                                         const CaseCounter& counter) {
  std::vector<CheckChoice> best;
  for (CheckChoice& choice : choices) {
    if (best.size() == most) break;
    const auto related = is_related(choice.attribute, finds, counter);
    if (!related) return fail(related.error());
    if (*related) best.push_back(std::move(choice));
  }
  return best;
}

}  // namespace

CheckWork work_of_check(std::string_view check, const WorkSoFar& so_far, const CheckBasis& basis) {
  CheckWork work;
  work.minutes = std::max(basis.figures.check_minutes(check, basis.vocabulary), kQuestionMinutes);
  const Entry* found = basis.vocabulary.find(EntryKind::kCheck, check);
  if (found == nullptr) return work;
  for (const std::string& removal : found->removals) {
    if (so_far.open.contains(removal)) continue;
    const Entry* entry = basis.vocabulary.find(EntryKind::kRemoval, removal);
    work.removals.push_back(removal);
    if (entry != nullptr) work.removal_minutes += entry->minutes.value_or(0);
  }
  return work;
}

NextChecks rate_checks(const std::vector<double>& causes, const std::vector<EvidenceItem>& items,
                       const WorkSoFar& so_far, const CheckBasis& basis) {
  NextChecks next;
  for (const AnswerRates& rates : basis.rates) {
    if (is_known(items, rates.attribute)) continue;
    if (!is_offered(rates.attribute, so_far, basis.vocabulary)) continue;
    CheckChoice choice;
    choice.attribute = rates.attribute;
    choice.answerable = rates.answerable;
    choice.information = expected_information(causes, rates.rates);
    if (choice.information < kLeastInformation) continue;
    set_minutes(choice, so_far, basis);
    choice.per_minute =
        choice.information * choice.answerable / (choice.minutes + choice.removal_minutes);
    (is_check(rates.attribute) ? next.checks : next.questions).push_back(std::move(choice));
  }
  sort_by_worth(next.checks);
  sort_by_worth(next.questions);
  return next;
}

Result<NextChecks> next_checks(const Ranking& ranking, const std::vector<EvidenceItem>& items,
                               const CaseCounter& counter, const WorkSoFar& so_far,
                               const CheckBasis& basis) {
  if (basis.rates.empty()) return NextChecks{};
  const auto causes = probabilities_by_cause(ranking, basis.rates.front().rates.front().size() - 1);
  NextChecks all = rate_checks(causes, items, so_far, basis);
  const auto finds = finds_in(items);
  auto checks = best_of(std::move(all.checks), kChecksShown, finds, counter);
  if (!checks) return fail(checks.error());
  auto questions = best_of(std::move(all.questions), kQuestionsShown, finds, counter);
  if (!questions) return fail(questions.error());
  for (auto* choices : {&*checks, &*questions}) {
    for (CheckChoice& choice : *choices) look_ahead(choice, causes, basis.rates);
  }
  return NextChecks{std::move(*checks), std::move(*questions)};
}

std::vector<double> causes_after(const std::vector<double>& causes,
                                 const std::vector<double>& rates) {
  std::vector<double> after;
  double sum = 0;
  for (std::size_t c = 0; c < causes.size(); ++c) sum += causes[c] * rates[c];
  for (std::size_t c = 0; c < causes.size(); ++c) {
    after.push_back(sum > 0 ? causes[c] * rates[c] / sum : causes[c]);
  }
  return after;
}

std::vector<double> probabilities_by_cause(const Ranking& ranking, std::size_t causes) {
  std::vector<double> probabilities(causes + 1);
  for (const RankedCause& row : ranking.causes) probabilities[row.cause] = row.probability;
  probabilities.back() = ranking.not_in_these_records;
  return probabilities;
}

}  // namespace shoplore
