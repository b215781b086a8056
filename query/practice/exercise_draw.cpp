#include "query/practice/exercise_draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "query/practice/case_replay.hpp"
#include "query/practice/code_question.hpp"
#include "query/practice/drawing.hpp"
#include "query/practice/subject_turn.hpp"
#include "query/practice/trust_question.hpp"
#include "query/practice/vain_repair_question.hpp"

namespace shoplore {
namespace {

// A check offered beside the best is worth at most this share of it: one that is as good is no
// wrong answer.
constexpr double kClearlyWorse = .6;
// Steps of difficulty that a case may be off by rather than have been asked before, or, where its
// cause is due, hold no check to ask for: which checks were recorded hangs on the cause.
constexpr double kAskedBefore = 10, kNoChecks = 3;

struct Known {
  std::uint32_t cases = 0, known = 0;
  std::vector<std::string> causes;  // with enough of known outcome
};

Result<Known> known_outcomes(const CaseCounter& counter) {
  const auto all = counter.tally({});
  if (!all) return fail(all.error());
  std::map<std::string, std::uint32_t> by_cause;
  Known out;
  for (const ProfileCount& each : all->profiles) {
    out.cases += each.cases;
    if (each.profile.outcome == OutcomeStatus::kUnknown) continue;
    out.known += each.cases;
    by_cause[each.profile.cause] += each.cases;
  }
  for (const auto& [cause, cases] : by_cause) {
    if (cases >= kFewestOfACause) out.causes.push_back(cause);
  }
  return out;
}

tl::unexpected<Error> nothing_to_ask(std::string why) {
  return fail(ErrorCode::kNotFound, "records", std::move(why));
}

class Drawing {
 public:
  Drawing(const RoundWish& wish, const ApprenticeRecord& record, const PracticeGround& ground,
          std::mt19937_64& random)
      : wish_(wish), record_(record), ground_(ground), random_(random) {}

  Result<PracticeRound> draw() {
    PracticeRound round;
    round.kind = wish_.kind;
    round.started = today();
    switch (wish_.kind) {
      case PracticeKind::kCause:
      case PracticeKind::kNextCheck:
        return of_case(std::move(round));
      case PracticeKind::kCode:
        return of_code(std::move(round));
      case PracticeKind::kVainRepair:
        return of_repairs(std::move(round));
      case PracticeKind::kCheckTrust:
        return of_trust(std::move(round));
    }
    return round;
  }

 private:
  const Ledger& ledger() const { return ground_.snapshot.ledger(); }

  Turn next_of(const std::vector<std::string>& subjects) {
    return next_turn(subjects, wish_.kind, record_, today(), random_);
  }

  void take_next(PracticeRound& round, const std::vector<std::string>& subjects) {
    Turn turn = next_of(subjects);
    round.subject = std::move(turn.subject);
    round.drawn = turn.drawn;
  }

  Result<PracticeRound> of_case(PracticeRound round) {
    const auto known = known_outcomes(ledger());
    if (!known) return fail(known.error());
    if (known->causes.size() < kFewestCauses) return too_few(*known);
    const Turn turn = next_of(known->causes);
    if (turn.drawn == Drawn::kDue) {
      round.drawn = Drawn::kDue;
      const auto drawn = draw_case(round, {turn.subject});
      if (!drawn) return fail(drawn.error());
      if (*drawn) return round;
    }
    // By chance a case is drawn, not a cause, and chosen by nothing that its cause decides: so
    // causes come up as often as they come in, and the records' own ranking stays calibrated.
    round.drawn = Drawn::kByChance;
    const auto drawn = draw_case(round, {known->causes.begin(), known->causes.end()});
    if (!drawn) return fail(drawn.error());
    if (*drawn) return round;
    return nothing_to_ask(
        "no closed case of known outcome has a symptom or a code to go by, and checks to choose "
        "from; record what vehicles come in with");
  }

  static tl::unexpected<Error> too_few(const Known& known) {
    return nothing_to_ask(fmt::format(
        "too few to practise on: {} closed cases, {} of them with a known outcome. Of causes with "
        "{} such cases each there must be {}, and there {} {}. Close cases with their cause and, "
        "when the vehicle is seen again, record whether the repair held; until then practise "
        "reading fault codes (kind code)",
        known.cases, known.known, kFewestOfACause, kFewestCauses,
        known.causes.size() == 1 ? "is" : "are", known.causes.size()));
  }

  // Fills in a case of one of the causes, its difficulty and what is offered; false when there is
  // none to ask.
  Result<bool> draw_case(PracticeRound& round, const std::set<std::string>& causes) {
    const auto cases = ledger().cases({});
    if (!cases) return fail(cases.error());
    std::vector<CaseId> ids;
    for (const CaseCause& each : *cases) {
      if (causes.contains(ledger().causes().key(each.cause))) ids.push_back(each.id);
    }
    shuffle_drawn(ids, random_);
    while (!ids.empty()) {
      const auto looked_at = next_exercises(ids);
      if (!looked_at) return fail(looked_at.error());
      const auto chosen = choose(round, *looked_at);
      if (!chosen) return fail(chosen.error());
      if (*chosen) return true;
    }
    return false;
  }

  // The nearest to what is wished for; false when none of them can be asked.
  Result<bool> choose(PracticeRound& round, const std::vector<PracticeCase>& exercises) {
    std::optional<double> nearest;
    for (const PracticeCase& each : exercises) {
      const auto first = first_probability(each);
      if (!first) return fail(first.error());
      const Difficulty difficulty = difficulty_of(*first);
      const bool dull = round.drawn == Drawn::kDue && each.record.checks.empty();
      const double off = times_asked(each.record.ref) * kAskedBefore + (dull ? kNoChecks : 0) +
                         std::abs(static_cast<int>(wanted()) - static_cast<int>(difficulty));
      if (nearest && off >= *nearest) continue;
      auto choices = choices_of(each);
      if (!choices) return fail(choices.error());
      if (round.kind == PracticeKind::kNextCheck && choices->empty()) continue;
      nearest = off;
      round.subject = each.cause;
      round.case_ref = each.record.ref;
      round.difficulty = difficulty;
      round.choices = std::move(*choices);
    }
    return nearest.has_value();
  }

  // Takes cases off the end until so many exercises are found.
  Result<std::vector<PracticeCase>> next_exercises(std::vector<CaseId>& ids) const {
    std::vector<PracticeCase> found;
    while (found.size() < kCasesLookedAt && !ids.empty()) {
      const CaseId id = ids.back();
      ids.pop_back();
      auto stored = ground_.store.read(id);
      if (!stored) return fail(stored.error());
      auto one =
          practice_case(id, std::move(stored->record), ledger().causes(), ground_.vocabulary);
      if (one) found.push_back(std::move(*one));
    }
    return found;
  }

  Result<double> first_probability(const PracticeCase& practised) const {
    const auto ranking = ground_.snapshot.ranking().rank(practised.arrival, {}, practised.stated);
    if (!ranking) return fail(ranking.error());
    return ranking->causes.empty() ? 0 : ranking->causes.front().probability;
  }

  double times_asked(const std::string& ref) const {
    return static_cast<double>(
        std::count_if(record_.results.begin(), record_.results.end(),
                      [&](const PracticeResult& each) { return each.case_ref == ref; }));
  }

  Difficulty wanted() const {
    if (wish_.difficulty) return *wish_.difficulty;
    double sum = 0, count = 0;
    for (auto it = record_.results.rbegin();
         it != record_.results.rend() && count < kAnswersLookedAt; ++it) {
      if (it->kind != wish_.kind) continue;
      sum += it->points;
      ++count;
    }
    if (count < kAnswersLookedAt) return Difficulty::kClear;
    const double mean = sum / count;
    if (mean < kPoorPoints) return Difficulty::kClear;
    return mean < kGoodPoints ? Difficulty::kFair : Difficulty::kHard;
  }

  // Of kNextCheck: the best check and clearly worse ones.
  Result<std::vector<std::string>> choices_of(const PracticeCase& practised) {
    std::vector<std::string> choices;
    if (wish_.kind != PracticeKind::kNextCheck) return choices;
    const auto replay = CaseReplay::of(practised, ground_.snapshot, ground_.vocabulary);
    if (!replay) return fail(replay.error());
    const auto ranking = replay->ranking({});
    if (!ranking) return fail(ranking.error());
    const auto best = replay->best_check(*ranking, {}, {});
    if (!best) return fail(best.error());
    const auto all = replay->all_checks();
    if (!all) return fail(all.error());
    if (!*best) return choices;
    std::vector<std::string> worse;
    for (const CheckChoice& each : *all) {
      if (each.per_minute <= kClearlyWorse * (*best)->per_minute) {
        worse.emplace_back(id_of_attribute(each.attribute));
      }
    }
    if (worse.size() + 1 < kChecksOffered) return choices;
    shuffle_drawn(worse, random_);
    choices.assign(worse.begin(), worse.begin() + kChecksOffered - 1);
    choices.emplace_back(id_of_attribute((*best)->attribute));
    shuffle_drawn(choices, random_);
    return choices;
  }

  Result<PracticeRound> of_code(PracticeRound round) {
    std::vector<std::string> codes;
    const auto items = ledger().stored_items();
    if (!items) return fail(items.error());
    for (const EvidenceItem& item : *items) {
      if (kind_of_attribute(item.attribute) == "code") {
        codes.emplace_back(id_of_attribute(item.attribute));
      }
    }
    const bool any = codes.empty() || drawn_below(2, random_) == 0;
    const auto drawn =
        fault_code_from_bytes(static_cast<std::uint16_t>(drawn_below(65'536, random_)));
    if (any) {
      round.subject = drawn.text();
    } else {
      take_next(round, codes);
    }
    const auto code = parse_fault_code(round.subject);
    if (!code) return fail(code.error());
    round.choices = classifications_offered(*code, random_);
    return round;
  }

  Result<PracticeRound> of_repairs(PracticeRound round) {
    const auto all = ledger().tally({});
    if (!all) return fail(all.error());
    std::vector<std::string> causes;
    for (CauseNumber c = 0; c < all->cases_by_cause.size(); ++c) {
      const std::string& key = ledger().causes().key(c);
      if (!repairs_to_tell_apart(all->profiles, key).empty()) causes.push_back(key);
    }
    if (causes.empty()) {
      return nothing_to_ask(fmt::format(
          "no cause here has repairs of which one clearly came back more than another, each with "
          "{} "
          "known outcomes or more; record whether repairs held when vehicles are seen again",
          kFewestOutcomes));
    }
    take_next(round, causes);
    for (const RepairChoice& each : repairs_to_tell_apart(all->profiles, round.subject)) {
      round.choices.push_back(each.fixes);
    }
    shuffle_drawn(round.choices, random_);
    return round;
  }

  Result<PracticeRound> of_trust(PracticeRound round) {
    const auto questions = trust_questions(ledger(), ground_.vocabulary);
    if (!questions) return fail(questions.error());
    std::vector<std::string> subjects;
    for (const TrustQuestion& each : *questions) subjects.push_back(each.subject);
    if (subjects.empty()) {
      return nothing_to_ask(fmt::format(
          "no check has {} verdicts of one sort with a known end; record checks with their verdict "
          "and, when the cause speaks against one, whether it was right or misled",
          kFewestVerdicts));
    }
    take_next(round, subjects);
    return round;
  }

  const RoundWish& wish_;
  const ApprenticeRecord& record_;
  const PracticeGround& ground_;
  std::mt19937_64& random_;
};

}  // namespace

Result<PracticeRound> drawn_exercise(const RoundWish& wish, const ApprenticeRecord& record,
                                     const PracticeGround& ground, std::mt19937_64& random) {
  return Drawing(wish, record, ground, random).draw();
}

Result<PracticeCase> case_of(const PracticeRound& round, const PracticeGround& ground) {
  auto stored = ground.store.read(round.case_ref);
  if (!stored) return fail(stored.error());
  auto practised = practice_case(stored->id, std::move(stored->record),
                                 ground.snapshot.ledger().causes(), ground.vocabulary);
  if (practised && practised->cause == round.subject) return std::move(*practised);
  return fail(ErrorCode::kConflict, round.id,
              "the case it asks about was changed meanwhile; start another round");
}

Difficulty difficulty_of(double first) {
  if (first >= kClearFrom) return Difficulty::kClear;
  return first >= kFairFrom ? Difficulty::kFair : Difficulty::kHard;
}

}  // namespace shoplore
