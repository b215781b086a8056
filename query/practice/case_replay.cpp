#include "query/practice/case_replay.hpp"

#include <algorithm>

#include "indexer/case_keys.hpp"
#include "query/cautions_for.hpp"
#include "query/checks/verdict_rates.hpp"
#include "query/fix_counts.hpp"
#include "query/watch_out/watch_out.hpp"

namespace shoplore {
namespace {

// Rows of an answer that warnings are looked for in.
constexpr std::size_t kRowsShown = 5;

// What an exercise with its checks and its cause can go past or heed.
bool can_be_gone_past(WarningKind kind) {
  return kind == WarningKind::kEarlierRepair || kind == WarningKind::kFixCameBack ||
         kind == WarningKind::kPassMisled;
}

}  // namespace

CaseReplay::CaseReplay(const PracticeCase& practised, const Snapshot& snapshot,
                       const Vocabulary& vocabulary, Ledger rest, std::vector<AnswerRates> rates)
    : practised_(&practised),
      snapshot_(&snapshot),
      vocabulary_(&vocabulary),
      rest_(std::move(rest)),
      rates_(std::move(rates)) {}

Result<CaseReplay> CaseReplay::of(const PracticeCase& practised, const Snapshot& snapshot,
                                  const Vocabulary& vocabulary) {
  Ledger rest = snapshot.ledger().without({practised.stated.id});
  auto rates = answer_rates(rest, snapshot.ranking().knobs().smoothing);
  if (!rates) return fail(rates.error());
  return CaseReplay(practised, snapshot, vocabulary, std::move(rest), std::move(*rates));
}

CheckBasis CaseReplay::basis() const {
  return {rates_, snapshot_->figures(), *vocabulary_};
}

std::vector<EvidenceItem> CaseReplay::items_with(const std::vector<EvidenceItem>& answered) const {
  std::vector<EvidenceItem> items = practised_->arrival;
  items.insert(items.end(), answered.begin(), answered.end());
  std::sort(items.begin(), items.end());
  return items;
}

Result<Ranking> CaseReplay::ranking(const std::vector<EvidenceItem>& answered) const {
  return snapshot_->ranking().rank(items_with(answered), {}, practised_->stated);
}

std::set<std::string> CaseReplay::unsafe() const {
  return unsafe_checks(practised_->arrival, {}, *vocabulary_);
}

Result<std::optional<CheckChoice>> CaseReplay::best_check(const Ranking& ranking,
                                                          const std::vector<EvidenceItem>& answered,
                                                          const WorkSoFar& so_far) const {
  WorkSoFar safe = so_far;
  safe.not_possible.merge(unsafe());
  auto next = next_checks(ranking, items_with(answered), rest_, safe, basis());
  if (!next) return fail(next.error());
  if (next->checks.empty()) return std::optional<CheckChoice>();
  return std::optional(std::move(next->checks.front()));
}

Result<std::vector<CheckChoice>> CaseReplay::all_checks() const {
  const auto now = ranking({});
  if (!now) return fail(now.error());
  const auto causes = probabilities_by_cause(*now, rest_.causes().size());
  WorkSoFar safe;
  safe.not_possible = unsafe();
  return rate_checks(causes, practised_->arrival, safe, basis()).checks;
}

WorkDone CaseReplay::work_of(const std::vector<std::string>& checks) const {
  WorkDone done;
  WorkSoFar so_far;
  for (const std::string& check : checks) {
    if (answer_of_check(practised_->record, check, *vocabulary_).verdict.empty()) continue;
    const CheckWork work = work_of_check(check, so_far, basis());
    done.minutes += work.minutes + work.removal_minutes;
    done.checks.push_back(check);
    so_far.open.insert(work.removals.begin(), work.removals.end());
  }
  return done;
}

Result<WorkDone> CaseReplay::best_play() const {
  std::vector<EvidenceItem> answered;
  std::vector<std::string> checks;
  WorkSoFar so_far;
  while (checks.size() < kMostChecksPlayed) {
    const auto now = ranking(answered);
    if (!now) return fail(now.error());
    if (!now->causes.empty() && now->causes.front().probability >= kSureEnough) break;
    const auto best = best_check(*now, answered, so_far);
    if (!best) return fail(best.error());
    if (!*best) break;
    const std::string check(id_of_attribute((*best)->attribute));
    const CheckAnswer answer = answer_of_check(practised_->record, check, *vocabulary_);
    if (answer.verdict.empty()) {
      so_far.not_possible.insert(check);
      continue;
    }
    answered.push_back({"check:" + check, answer.verdict});
    so_far.open.insert((*best)->removals.begin(), (*best)->removals.end());
    checks.push_back(check);
  }
  return work_of(checks);
}

Result<std::vector<Warning>> CaseReplay::warnings() const {
  const auto now = ranking({});
  if (!now) return fail(now.error());
  const auto all = rest_.tally({});
  if (!all) return fail(all.error());
  std::vector<LikelyCause> rows;
  for (const RankedCause& ranked : now->causes) {
    if (rows.size() == kRowsShown) break;
    const std::string& key = rest_.causes().key(ranked.cause);
    LikelyCause row;
    row.component = cause_parts(key).component;
    row.failure = cause_parts(key).failure;
    row.probability = ranked.probability;
    row.fixes_together = fixes_together(all->profiles, key);
    rows.push_back(std::move(row));
  }
  const Case arrived = as_it_came_in(practised_->record);
  const auto items = evidence_of(arrived, *vocabulary_);
  const auto known = known_in(arrived, *vocabulary_);
  const auto basis = watch_basis(rest_, *vocabulary_);
  if (!basis) return fail(basis.error());
  auto warnings =
      counted_warnings({items, known, rows, {}, rest_, *vocabulary_, *basis, snapshot_->figures()});
  if (!warnings) return fail(warnings.error());
  std::erase_if(*warnings, [](const Warning& each) { return !can_be_gone_past(each.kind); });
  return std::move(*warnings);
}

}  // namespace shoplore
