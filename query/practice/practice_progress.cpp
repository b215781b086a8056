#include "query/practice/practice_progress.hpp"

#include <algorithm>
#include <map>

#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

// Sums of points by what they are of.
struct Mean {
  std::size_t rounds = 0, right = 0;
  double points = 0;
  void add(const PracticeResult& result) {
    ++rounds;
    right += result.right == YesNo::kYes ? 1U : 0U;
    points += result.points;
  }
  [[nodiscard]] double mean() const {
    return rounds > 0 ? points / static_cast<double>(rounds) : 0;
  }
};

using Results = std::vector<const PracticeResult*>;

Results cause_rounds(const ApprenticeRecord& record) {
  Results rounds;
  for (const PracticeResult& each : record.results) {
    if (each.kind == PracticeKind::kCause) rounds.push_back(&each);
  }
  return rounds;
}

CalibrationWord word_of(const Calibration& calibration) {
  if (calibration.rounds < kFewestToTell) return CalibrationWord::kTooFew;
  const double said = calibration.said_of_first / 100;
  if (said > calibration.first_was_so.interval.high) return CalibrationWord::kOverconfident;
  return said < calibration.first_was_so.interval.low ? CalibrationWord::kUnderconfident
                                                      : CalibrationWord::kCalibrated;
}

Calibration calibration_of(const Results& rounds) {
  Calibration out;
  std::vector<double> said;
  std::vector<char> came_true;
  std::uint32_t first_right = 0;
  for (const PracticeResult* round : rounds) {
    if (round->said.empty() || round->drawn == Drawn::kDue) continue;
    ++out.rounds;
    for (const SaidPart& part : round->said) {
      said.push_back(part.percent / 100);
      came_true.push_back(part.right == YesNo::kYes ? 1 : 0);
    }
    const auto first = std::max_element(
        round->said.begin(), round->said.end(),
        [](const SaidPart& a, const SaidPart& b) { return a.percent < b.percent; });
    out.said_of_first += first->percent;
    first_right += first->right == YesNo::kYes ? 1U : 0U;
  }
  if (out.rounds > 0) out.said_of_first /= static_cast<double>(out.rounds);
  out.first_was_so = share_of(first_right, static_cast<std::uint32_t>(out.rounds));
  out.bins = reliability(said, came_true, kSaidBins);
  out.error = calibration_error(out.bins);
  out.word = word_of(out);
  return out;
}

std::vector<SymptomProgress> weak_symptoms(const Results& rounds, double mean_of_all) {
  std::map<std::string, Mean> by_symptom;
  for (const PracticeResult* round : rounds) {
    for (const std::string& symptom : round->symptoms) by_symptom[symptom].add(*round);
  }
  std::vector<SymptomProgress> weak;
  for (const auto& [symptom, mean] : by_symptom) {
    if (mean.rounds < kFewestOfASymptom || mean.mean() > mean_of_all - kWeaker) continue;
    weak.push_back({symptom, mean.rounds, mean.mean()});
  }
  std::stable_sort(weak.begin(), weak.end(),
                   [](const auto& a, const auto& b) { return a.points < b.points; });
  return weak;
}

void add_patterns(PracticeProgress& progress, const ApprenticeRecord& record,
                  const Results& rounds) {
  std::map<std::string, Mean> by_cause;
  for (const PracticeResult* round : rounds) by_cause[round->subject].add(*round);
  for (const PractisedSubject& each : record.subjects) {
    if (each.kind != PracticeKind::kCause) continue;
    const Mean& mean = by_cause[each.subject];
    const bool known = each.repetition.due > each.repetition.last;
    const bool mastered = known && each.repetition.interval_days >= kMasteredDays;
    (mastered ? progress.mastered : progress.to_learn)
        .push_back({each.subject, mean.rounds, mean.mean(), each.repetition.due});
  }
  std::sort(progress.mastered.begin(), progress.mastered.end(),
            [](const auto& a, const auto& b) { return a.cause < b.cause; });
  std::stable_sort(progress.to_learn.begin(), progress.to_learn.end(),
                   [](const auto& a, const auto& b) { return a.due < b.due; });
}

}  // namespace

PracticeProgress progress_of(const ApprenticeRecord& record) {
  PracticeProgress progress;
  progress.apprentice = record.apprentice;
  std::map<PracticeKind, Mean> by_kind;
  for (const PracticeResult& each : record.results) by_kind[each.kind].add(each);
  for (const auto& [kind, mean] : by_kind) {
    progress.kinds.push_back({kind, mean.rounds, mean.right, mean.mean()});
  }
  const Results rounds = cause_rounds(record);
  for (const PracticeResult* round : rounds) {
    progress.records_points += round->records_points / static_cast<double>(rounds.size());
    progress.unheeded += round->unheeded;
  }
  progress.points = by_kind[PracticeKind::kCause].mean();
  progress.calibration = calibration_of(rounds);
  add_patterns(progress, record, rounds);
  progress.weak = weak_symptoms(rounds, progress.points);
  return progress;
}

}  // namespace shoplore
