// What the records would have said of a closed case step by step, that very case left out.
//
// The ranking leaves it out as the track record does (LeftOut of ranking/question_counts.hpp), but
// goes by findings only, not by words foreign to the vocabulary; counts, expected answers of checks
// and warnings are taken from a ledger without it, so that no check is advised because it told in
// this very case.
// Lifetime: refers to the snapshot, the vocabulary and the case. One thread. Errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "query/practice/practice_case.hpp"
#include "query/practice/practice_round.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

// The records' own play ends when a cause is this likely, after so many checks, or when no check is
// worth its minutes.
inline constexpr double kSureEnough = .9;
inline constexpr std::size_t kMostChecksPlayed = 8;

// Minutes of checks, what has to come off for them counted once.
struct WorkDone {
  double minutes = 0;
  std::vector<std::string> checks;  // ids, in order
};

class CaseReplay {
 public:
  [[nodiscard]] static Result<CaseReplay> of(const PracticeCase& practised,
                                             const Snapshot& snapshot,
                                             const Vocabulary& vocabulary);

  // Ranking of the case as it came in and these answered checks (items "check:..." = verdict).
  [[nodiscard]] Result<Ranking> ranking(const std::vector<EvidenceItem>& answered) const;

  // The check worth most for its minutes then; nothing when none is worth it. Never one that must
  // not be done with these findings.
  [[nodiscard]] Result<std::optional<CheckChoice>> best_check(
      const Ranking& ranking, const std::vector<EvidenceItem>& answered,
      const WorkSoFar& so_far) const;

  // Every check that could be done as it came in, the one worth most first.
  [[nodiscard]] Result<std::vector<CheckChoice>> all_checks() const;

  // Checks that must not be done on the case as it came in.
  [[nodiscard]] std::set<std::string> unsafe() const;

  // Those of the checks that were recorded in the case.
  [[nodiscard]] WorkDone work_of(const std::vector<std::string>& checks) const;

  // The checks that following the advice would have done: one not recorded in this case is passed
  // over and costs nothing, as it costs the apprentice nothing.
  [[nodiscard]] Result<WorkDone> best_play() const;

  // What these records warn of with the case as it came in.
  [[nodiscard]] Result<std::vector<Warning>> warnings() const;

 private:
  CaseReplay(const PracticeCase& practised, const Snapshot& snapshot, const Vocabulary& vocabulary,
             Ledger rest, std::vector<AnswerRates> rates);
  [[nodiscard]] CheckBasis basis() const;
  [[nodiscard]] std::vector<EvidenceItem> items_with(
      const std::vector<EvidenceItem>& answered) const;

  const PracticeCase* practised_;
  const Snapshot* snapshot_;
  const Vocabulary* vocabulary_;
  Ledger rest_;
  std::vector<AnswerRates> rates_;
};

}  // namespace shoplore
