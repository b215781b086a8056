#include "query/practice/round_judgement.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "indexer/case_keys.hpp"
#include "query/practice/case_replay.hpp"
#include "query/practice/code_question.hpp"
#include "query/practice/trust_question.hpp"
#include "query/practice/vain_repair_question.hpp"

namespace shoplore {
namespace {

// Causes of the records shown at each step.
constexpr std::size_t kLeadingShown = 3;
constexpr double kAllPoints = 100, kRightFrom = 99.995;

tl::unexpected<Error> changed_meanwhile(const PracticeRound& round) {
  return fail(ErrorCode::kConflict, round.id,
              "the records it asks about have changed so far that it cannot be judged; start "
              "another round");
}

Judgement judgement_of(const PracticeRound& round, double points) {
  Judgement out;
  out.feedback.points = points;
  out.feedback.right = points >= kRightFrom ? YesNo::kYes : YesNo::kNo;
  out.feedback.grade = grade_of(points, kAllPoints, YesNo::kYes);
  out.feedback.case_ref = round.case_ref;
  return out;
}

// What came of a case, gathered step by step.
class CauseJudging {
 public:
  CauseJudging(const PracticeRound& round, const PracticeCase& practised, const CaseReplay& replay,
               const PracticeGround& ground, std::vector<std::uint32_t> seen)
      : round_(round),
        practised_(practised),
        replay_(replay),
        ground_(ground),
        seen_(std::move(seen)) {}

  Result<Judgement> judgement() {
    if (auto walked = walk(); !walked) return fail(walked.error());
    feedback_.truth = practised_.cause;
    feedback_.case_ref = round_.case_ref;
    feedback_.right = round_.committed == practised_.cause ? YesNo::kYes : YesNo::kNo;
    feedback_.score = proper_score(forecast(), practised_.stated.cause);
    feedback_.points = feedback_.score->points;
    feedback_.records_score = records_score_;
    feedback_.grade = grade_of(feedback_.points, records_score_.points, feedback_.right);
    if (auto worked = compare_work(); !worked) return fail(worked.error());
    if (auto warned = add_warnings(); !warned) return fail(warned.error());
    return Judgement{std::move(feedback_), result()};
  }

 private:
  std::vector<double> forecast() const {
    return forecast_of(beliefs_, ground_.snapshot.ledger().causes(), seen_);
  }

  // A new moment begins with every answered check; beliefs belong to the moment they were stated.
  Result<void> walk() {
    if (auto begun = begin_moment("", ""); !begun) return begun;
    for (const PracticeStep& step : round_.steps) {
      if (step.kind == StepKind::kBelief) {
        beliefs_ = step.beliefs;
        FeedbackStep& moment = feedback_.steps.back();
        moment.beliefs = beliefs_;
        moment.points = proper_score(forecast(), practised_.stated.cause).points;
        continue;
      }
      if (step.verdict.empty()) continue;  // not recorded, or refused for safety: costs nothing
      asked_.push_back(step.check);
      answered_.push_back({"check:" + step.check, step.verdict});
      if (auto begun = begin_moment(step.check, step.verdict); !begun) return begun;
    }
    return {};
  }

  Result<void> begin_moment(const std::string& check, const std::string& verdict) {
    const auto ranking = replay_.ranking(answered_);
    if (!ranking) return fail(ranking.error());
    const auto& causes = ground_.snapshot.ledger().causes();
    FeedbackStep moment;
    moment.check = check;
    moment.verdict = verdict;
    records_score_ =
        proper_score(probabilities_by_cause(*ranking, causes.size()), practised_.stated.cause);
    moment.records_points = records_score_.points;
    moment.not_in_these_records = ranking->not_in_these_records;
    for (const RankedCause& ranked : ranking->causes) {
      if (moment.records.size() == kLeadingShown) break;
      const std::string& key = causes.key(ranked.cause);
      moment.records.push_back(
          {cause_parts(key).component, cause_parts(key).failure, ranked.probability});
    }
    WorkSoFar so_far;
    for (const EvidenceItem& item : answered_) {
      const Entry* entry =
          ground_.vocabulary.find(EntryKind::kCheck, id_of_attribute(item.attribute));
      if (entry != nullptr) so_far.open.insert(entry->removals.begin(), entry->removals.end());
    }
    const auto best = replay_.best_check(*ranking, answered_, so_far);
    if (!best) return fail(best.error());
    if (*best) {
      moment.best_check = id_of_attribute((*best)->attribute);
      moment.best_minutes = (*best)->minutes + (*best)->removal_minutes;
    }
    feedback_.steps.push_back(std::move(moment));
    return {};
  }

  Result<void> compare_work() {
    feedback_.minutes = replay_.work_of(asked_).minutes;
    const auto best = replay_.best_play();
    if (!best) return fail(best.error());
    feedback_.best_minutes = best->minutes;
    feedback_.best_checks = best->checks;
    return {};
  }

  // Unheeded: the part that had been replaced in vain was committed to, or a check was believed of
  // which its passes are warned.
  bool went_past(const Warning& warning) const {
    if (warning.kind == WarningKind::kEarlierRepair) {
      const std::string component = fix_parts(warning.about).component;
      return feedback_.right == YesNo::kNo && cause_parts(round_.committed).component == component;
    }
    if (warning.kind != WarningKind::kPassMisled || feedback_.right == YesNo::kYes) return false;
    return std::find(answered_.begin(), answered_.end(),
                     EvidenceItem{"check:" + warning.about, "pass"}) != answered_.end();
  }

  Result<void> add_warnings() {
    auto warnings = replay_.warnings();
    if (!warnings) return fail(warnings.error());
    for (Warning& each : *warnings) {
      const YesNo heeded = went_past(each) ? YesNo::kNo : YesNo::kYes;
      feedback_.warnings.push_back({std::move(each), heeded});
    }
    return {};
  }

  PracticeResult result() const {
    PracticeResult result;
    for (const Belief& belief : beliefs_) {
      result.said.push_back(
          {belief.percent, belief.cause == practised_.cause ? YesNo::kYes : YesNo::kNo});
    }
    result.records_points = records_score_.points;
    result.minutes = feedback_.minutes;
    result.best_minutes = feedback_.best_minutes;
    result.unheeded =
        std::count_if(feedback_.warnings.begin(), feedback_.warnings.end(),
                      [](const PracticeWarning& each) { return each.heeded == YesNo::kNo; });
    for (const EvidenceItem& item : practised_.arrival) {
      if (kind_of_attribute(item.attribute) == "symptom" && item.value == "present") {
        result.symptoms.emplace_back(id_of_attribute(item.attribute));
      }
    }
    return result;
  }

  const PracticeRound& round_;
  const PracticeCase& practised_;
  const CaseReplay& replay_;
  const PracticeGround& ground_;
  const std::vector<std::uint32_t> seen_;
  PracticeFeedback feedback_;
  ProperScore records_score_;
  std::vector<Belief> beliefs_;
  std::vector<std::string> asked_;
  std::vector<EvidenceItem> answered_;
};

Result<Judgement> judged_cause(const PracticeRound& round, const PracticeGround& ground) {
  const auto practised = case_of(round, ground);
  if (!practised) return fail(practised.error());
  const auto replay = CaseReplay::of(*practised, ground.snapshot, ground.vocabulary);
  if (!replay) return fail(replay.error());
  auto seen = ground.snapshot.ledger().by_cause({});
  if (!seen) return fail(seen.error());
  return CauseJudging(round, *practised, *replay, ground, std::move(*seen)).judgement();
}

// What each choice is worth against the best of them; empty when none is worth anything now.
std::vector<ChoiceFeedback> worth_of_choices(const std::vector<std::string>& choices,
                                             const std::vector<CheckChoice>& checks) {
  std::vector<ChoiceFeedback> out;
  double best = 0;
  for (const std::string& choice : choices) {
    out.push_back({choice, 0, {}, {}, {}});
    for (const CheckChoice& check : checks) {
      if (check.attribute != "check:" + choice) continue;
      out.back().points = check.per_minute;
      out.back().minutes = check.minutes + check.removal_minutes;
      out.back().information = check.information;
      best = std::max(best, check.per_minute);
    }
  }
  if (best <= 0) return {};
  for (ChoiceFeedback& each : out) each.points *= kAllPoints / best;
  return out;
}

Result<Judgement> judged_next_check(const PracticeRound& round, const PracticeGround& ground) {
  const auto practised = case_of(round, ground);
  if (!practised) return fail(practised.error());
  const auto replay = CaseReplay::of(*practised, ground.snapshot, ground.vocabulary);
  if (!replay) return fail(replay.error());
  const auto all = replay->all_checks();
  if (!all) return fail(all.error());
  auto choices = worth_of_choices(round.choices, *all);
  if (choices.empty()) return changed_meanwhile(round);
  const auto chosen = std::find_if(choices.begin(), choices.end(), [&](const auto& each) {
    return each.choice == round.committed;
  });
  Judgement out = judgement_of(round, chosen->points);
  const auto best =
      std::max_element(choices.begin(), choices.end(),
                       [](const auto& a, const auto& b) { return a.points < b.points; });
  out.feedback.truth = best->choice;
  out.feedback.choices = std::move(choices);
  return out;
}

Result<Judgement> judged_code(const PracticeRound& round) {
  const auto code = parse_fault_code(round.subject);
  if (!code) return fail(code.error());
  Judgement out = judgement_of(round, points_of_classification(round.committed, *code));
  out.feedback.truth = classification_of(*code);
  for (const std::string& choice : round.choices) {
    out.feedback.choices.push_back({choice, points_of_classification(choice, *code), {}, {}, {}});
  }
  return out;
}

Result<Judgement> judged_repair(const PracticeRound& round, const PracticeGround& ground) {
  const auto all = ground.snapshot.ledger().tally({});
  if (!all) return fail(all.error());
  const auto counted = repairs_to_tell_apart(all->profiles, round.subject);
  const auto chosen = std::find_if(counted.begin(), counted.end(), [&](const RepairChoice& each) {
    return each.fixes == round.committed;
  });
  if (chosen == counted.end()) return changed_meanwhile(round);
  Judgement out = judgement_of(round, points_of_repair(*chosen, counted.front()));
  out.feedback.truth = counted.front().fixes;
  for (const RepairChoice& each : counted) {
    out.feedback.choices.push_back(
        {each.fixes, points_of_repair(each, counted.front()), each.came_back, {}, {}});
  }
  return out;
}

Result<Judgement> judged_trust(const PracticeRound& round, const PracticeGround& ground) {
  const auto questions = trust_questions(ground.snapshot.ledger(), ground.vocabulary);
  if (!questions) return fail(questions.error());
  const auto found = std::find_if(questions->begin(), questions->end(),
                                  [&](const auto& each) { return each.subject == round.subject; });
  if (found == questions->end()) return changed_meanwhile(round);
  double percent = 0;
  std::from_chars(round.committed.data(), round.committed.data() + round.committed.size(), percent);
  Judgement out = judgement_of(round, points_of_trust(percent, found->misled));
  out.feedback.counted = found->misled;
  return out;
}

Result<Judgement> judged_by_kind(const PracticeRound& round, const PracticeGround& ground) {
  switch (round.kind) {
    case PracticeKind::kCause:
      return judged_cause(round, ground);
    case PracticeKind::kNextCheck:
      return judged_next_check(round, ground);
    case PracticeKind::kCode:
      return judged_code(round);
    case PracticeKind::kVainRepair:
      return judged_repair(round, ground);
    case PracticeKind::kCheckTrust:
      return judged_trust(round, ground);
  }
  return changed_meanwhile(round);
}

}  // namespace

Result<Judgement> judged_round(const PracticeRound& round, const PracticeGround& ground) {
  auto judged = judged_by_kind(round, ground);
  if (!judged) return judged;
  PracticeResult& result = judged->result;
  result.kind = round.kind;
  result.subject = round.subject;
  result.case_ref = round.case_ref;
  result.drawn = round.drawn;
  result.day = today();
  result.points = judged->feedback.points;
  result.grade = judged->feedback.grade;
  result.right = judged->feedback.right;
  return judged;
}

}  // namespace shoplore
