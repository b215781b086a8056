// A round of practice: one question to an apprentice, what was answered, what came of it.
//
// Plain values. What a round asks about (`subject`, `case_ref`) would tell the answer, so only the
// kept file and the feedback hold it: the ways in show a RoundView. practice_desk.hpp plays rounds.
// A choice is an id: of kNextCheck a check, of kVainRepair fix keys done together joined by "+", of
// kCode a classification as code_question.hpp writes it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/case_record.hpp"
#include "query/answer.hpp"
#include "query/practice/belief.hpp"

namespace shoplore {

enum class PracticeKind { kCause, kNextCheck, kCode, kVainRepair, kCheckTrust };
template <>
inline constexpr EnumTable<PracticeKind, 5> kEnumNames<PracticeKind>{
    {{PracticeKind::kCause, "cause"},
     {PracticeKind::kNextCheck, "next_check"},
     {PracticeKind::kCode, "code"},
     {PracticeKind::kVainRepair, "vain_repair"},
     {PracticeKind::kCheckTrust, "check_trust"}}};

// How peaked the records' own ranking of the case as it came in is: the probability of its first
// cause .8 or more, .5 or more, less.
enum class Difficulty { kClear, kFair, kHard };
template <>
inline constexpr EnumTable<Difficulty, 3> kEnumNames<Difficulty>{
    {{Difficulty::kClear, "clear"}, {Difficulty::kFair, "fair"}, {Difficulty::kHard, "hard"}}};
inline constexpr double kClearFrom = .8, kFairFrom = .5;

// Why an exercise came up: it was due again, or by chance, as often as the like of it comes in.
enum class Drawn { kDue, kByChance };
template <>
inline constexpr EnumTable<Drawn, 2> kEnumNames<Drawn>{
    {{Drawn::kDue, "due"}, {Drawn::kByChance, "by_chance"}}};

// What somebody wants to practise.
struct RoundWish {
  std::string apprentice;  // handle
  PracticeKind kind = PracticeKind::kCause;
  std::optional<Difficulty> difficulty;
  std::optional<std::uint64_t> seed;  // else by handle and rounds so far
};

enum class StepKind { kBelief, kCheck };
template <>
inline constexpr EnumTable<StepKind, 2> kEnumNames<StepKind>{
    {{StepKind::kBelief, "belief"}, {StepKind::kCheck, "check"}}};

struct PracticeStep {
  StepKind kind = StepKind::kBelief;
  std::vector<Belief> beliefs;  // of kBelief
  std::string check;            // of kCheck: its id
  // Its verdict in that case: pass, fail, unclear, mixed; empty when it was not recorded there.
  std::string verdict;
  std::string reading;  // "4.2 bar"; may be empty
  // Yes: not to be done with these findings (cautions_for.hpp); then no verdict is given.
  YesNo unsafe = YesNo::kNo;
};

struct PracticeRound {
  std::string id;  // "a1-0f3c9a5d": the apprentice's handle and eight hex digits
  PracticeKind kind = PracticeKind::kCause;
  std::string subject;   // cause key; of kCode a code, of kCheckTrust "check=verdict"
  std::string case_ref;  // of kCause and kNextCheck
  std::vector<std::string> choices;
  std::optional<Difficulty> difficulty;  // of kCause and kNextCheck
  Drawn drawn = Drawn::kByChance;
  Date started;
  std::vector<PracticeStep> steps;
  std::string committed;  // cause key, choice or percentage; empty while the round is open
};

// What may be seen of a round before it is committed.
struct RoundView {
  std::string id;
  PracticeKind kind = PracticeKind::kCause;
  std::optional<Difficulty> difficulty;
  std::string about;            // what is asked about where that gives nothing away: of kCode the
                                // code, of kVainRepair the cause, of kCheckTrust "check=verdict"
  std::optional<Case> arrival;  // the case as it came in
  std::vector<std::string> choices;
  std::vector<PracticeStep> steps;
  YesNo open = YesNo::kYes;
};

// What an apprentice commits to, by kind: a cause by words or key; the number of a choice, from 1;
// a percentage.
struct Commitment {
  std::string cause;
  std::optional<int> choice;
  std::optional<double> percent;
};

// One moment of a case: as it came in, then after every check that was answered.
struct FeedbackStep {
  std::string check, verdict;   // what was learnt; empty as it came in
  std::vector<Belief> beliefs;  // the last stated by then; empty when nothing was
  std::optional<double> points;
  double records_points = 0;
  std::vector<LeadingCause> records;  // what these records would have said, that case left out
  double not_in_these_records = 0;
  std::string best_check;  // worth most for its minutes then; empty when none was worth it
  double best_minutes = 0;
};

struct PracticeWarning {
  Warning warning;
  YesNo heeded = YesNo::kYes;  // no: the repair or verdict warned of was trusted
};

struct ChoiceFeedback {
  std::string choice;
  double points = 0;                           // what it would have scored
  std::optional<Share> share;                  // of kVainRepair: came back
  std::optional<double> minutes, information;  // of kNextCheck
};

struct PracticeFeedback {
  std::string truth;     // cause key or choice; of kCheckTrust empty, the share says it
  std::string case_ref;  // of kCause and kNextCheck
  YesNo right = YesNo::kNo;
  double points = 0;
  int grade = 0;
  Date due;  // when the like of it comes up again
  std::vector<ChoiceFeedback> choices;
  std::optional<Share> counted;  // of kCheckTrust
  // Of kCause:
  std::optional<ProperScore> score, records_score;  // of the last belief; of the records by then
  std::vector<FeedbackStep> steps;
  double minutes = 0, best_minutes = 0;  // of checks recorded in that case; removals counted once
  std::vector<std::string> best_checks;  // that the records' advice would have done
  std::vector<PracticeWarning> warnings;
};

}  // namespace shoplore
