#include "query/checks/next_check.hpp"

#include <algorithm>

#include "query/checks/expected_information.hpp"

namespace shoplore {
namespace {

bool is_check(std::string_view attribute) {
  return attribute.starts_with("check:");
}

std::string id_of(const std::string& attribute) {
  return attribute.substr(attribute.find(':') + 1);
}

bool is_known(const std::vector<EvidenceItem>& items, const std::string& attribute) {
  return std::any_of(items.begin(), items.end(),
                     [&](const EvidenceItem& item) { return item.attribute == attribute; });
}

// A word of the vocabulary that is no longer offered is not proposed either.
bool is_offered(const std::string& attribute, const WorkSoFar& so_far,
                const Vocabulary& vocabulary) {
  if (!is_check(attribute)) return true;
  const std::string id = id_of(attribute);
  if (so_far.not_possible.contains(id)) return false;
  const Entry* entry = vocabulary.find(EntryKind::kCheck, id);
  return entry == nullptr || entry->retired.empty();
}

void set_minutes(CheckChoice& choice, const WorkSoFar& so_far, const CheckBasis& basis) {
  if (!is_check(choice.attribute)) {
    choice.minutes = kQuestionMinutes;
    return;
  }
  const std::string id = id_of(choice.attribute);
  choice.minutes = std::max(basis.figures.check_minutes(id, basis.vocabulary), kQuestionMinutes);
  const Entry* check = basis.vocabulary.find(EntryKind::kCheck, id);
  if (check == nullptr) return;
  for (const std::string& removal : check->removals) {
    if (so_far.open.contains(removal)) continue;
    const Entry* entry = basis.vocabulary.find(EntryKind::kRemoval, removal);
    choice.removals.push_back(removal);
    if (entry != nullptr) choice.removal_minutes += entry->minutes.value_or(0);
  }
}

void sort_by_worth(std::vector<CheckChoice>& choices) {
  std::stable_sort(choices.begin(), choices.end(),
                   [](const auto& a, const auto& b) { return a.per_minute > b.per_minute; });
}

Result<void> look_ahead(CheckChoice& choice, const std::vector<double>& causes,
                        const std::vector<EvidenceItem>& items, const Filter& filter,
                        const RankingModel& model, const CheckBasis& basis) {
  const auto rates = std::find_if(basis.rates.begin(), basis.rates.end(), [&](const auto& each) {
    return each.attribute == choice.attribute;
  });
  const auto shares = answer_shares(causes, rates->rates);
  for (std::size_t a = 0; a < rates->answers.size(); ++a) {
    std::vector<EvidenceItem> then = items;
    then.push_back({choice.attribute, rates->answers[a]});
    const auto ranking = model.rank(then, filter);
    if (!ranking) return fail(ranking.error());
    Outlook outlook{rates->answers[a], shares[a], {}};
    for (const RankedCause& row : ranking->causes) {
      if (outlook.leading.size() == kLeading) break;
      outlook.leading.emplace_back(row.cause, row.probability);
    }
    choice.outlooks.push_back(std::move(outlook));
  }
  return {};
}

}  // namespace

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
                               const Filter& filter, const RankingModel& model,
                               const WorkSoFar& so_far, const CheckBasis& basis) {
  if (basis.rates.empty()) return NextChecks{};
  const auto causes = probabilities_by_cause(ranking, basis.rates.front().rates.front().size() - 1);
  NextChecks next = rate_checks(causes, items, so_far, basis);
  if (next.checks.size() > kChecksShown) next.checks.resize(kChecksShown);
  if (next.questions.size() > kQuestionsShown) next.questions.resize(kQuestionsShown);
  for (auto* choices : {&next.checks, &next.questions}) {
    for (CheckChoice& choice : *choices) {
      if (auto done = look_ahead(choice, causes, items, filter, model, basis); !done) {
        return fail(done.error());
      }
    }
  }
  return next;
}

std::vector<double> probabilities_by_cause(const Ranking& ranking, std::size_t causes) {
  std::vector<double> probabilities(causes + 1);
  for (const RankedCause& row : ranking.causes) probabilities[row.cause] = row.probability;
  probabilities.back() = ranking.not_in_these_records;
  return probabilities;
}

}  // namespace shoplore
