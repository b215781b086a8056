#include "query/practice/practice_desk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"
#include "query/cause_words.hpp"
#include "query/cautions_for.hpp"
#include "query/practice/round_judgement.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kChecksOfferedInErrors = 5;

std::string handle_of(const std::string& id) {
  return id.substr(0, id.find('-'));
}

// Unguessable enough that nobody stumbles into another's round.
std::string fresh_id(const std::string& handle) {
  std::random_device device;
  return fmt::format("{}-{:08x}", handle, device());
}

// FNV-1a: the same draw for the same handle and count, on every machine.
std::uint64_t seed_of(const RoundWish& wish, const ApprenticeRecord& record) {
  if (wish.seed) return *wish.seed;
  std::uint64_t hash = 14'695'981'039'346'656'037U;
  for (const char c : fmt::format("{}/{}", wish.apprentice, record.rounds_started)) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 1'099'511'628'211U;
  }
  return hash;
}

tl::unexpected<Error> no_round(const std::string& id) {
  return fail(ErrorCode::kNotFound, id,
              fmt::format("there is no such round; the last {} of an apprentice are kept for {} "
                          "days",
                          kMostRounds, kRoundDays));
}

PracticeRound* round_in(ApprenticeRecord& record, const std::string& id) {
  const auto found = std::find_if(record.rounds.begin(), record.rounds.end(),
                                  [&](const PracticeRound& each) { return each.id == id; });
  return found == record.rounds.end() ? nullptr : &*found;
}

Result<void> require_open(const PracticeRound& round) {
  if (round.committed.empty()) return {};
  return fail(ErrorCode::kConflict, round.id, "is committed already; start another round");
}

Result<void> require_steps(const PracticeRound& round, std::string_view what) {
  if (auto open = require_open(round); !open) return open;
  if (round.kind != PracticeKind::kCause) {
    return fail(ErrorCode::kConflict, round.id,
                fmt::format("a round of the kind {} takes no {}; commit to an answer",
                            name_of(round.kind), what));
  }
  if (round.steps.size() < kMostSteps) return {};
  return fail(ErrorCode::kConflict, round.id,
              fmt::format("has {} steps, no more are taken; commit to a cause", kMostSteps));
}

// After a judged round: the result is kept, and its subject comes up again in its time.
Date learnt(ApprenticeRecord& record, PracticeResult result) {
  auto known = std::find_if(record.subjects.begin(), record.subjects.end(), [&](const auto& each) {
    return each.kind == result.kind && each.subject == result.subject;
  });
  if (known == record.subjects.end()) {
    record.subjects.push_back({result.kind, result.subject, {}});
    known = std::prev(record.subjects.end());
  }
  known->repetition = repeated(known->repetition, result.grade, result.day);
  record.results.push_back(std::move(result));
  return known->repetition.due;
}

Date due_of(const ApprenticeRecord& record, const PracticeRound& round) {
  for (const PractisedSubject& each : record.subjects) {
    if (each.kind == round.kind && each.subject == round.subject) return each.repetition.due;
  }
  return today();
}

// The key of a cause that the records hold cases of.
Result<std::string> seen_cause(std::string_view words, const std::string& place,
                               const PracticeGround& ground) {
  auto named = cause_from_words(words, place, ground.vocabulary, ground.snapshot.ledger());
  if (!named) return fail(named.error());
  if (named->cases > 0) return std::move(named->key);
  return fail(ErrorCode::kInvalidInput, place,
              fmt::format("these records hold no case of {}",
                          display_cause_key(named->key, ground.vocabulary)));
}

std::vector<std::string> stems_of(std::string_view text) {
  std::vector<std::string> stems;
  for (const Word& word : words_of(text)) stems.push_back(stem(word.text));
  return stems;
}

// Whether every one of the stems begins one of the name's.
bool names_fit(const std::vector<std::string>& stems, std::string_view name) {
  const auto of_name = stems_of(name);
  return std::all_of(stems.begin(), stems.end(), [&](const std::string& wanted) {
    return std::any_of(of_name.begin(), of_name.end(),
                       [&](const std::string& each) { return each.starts_with(wanted); });
  });
}

}  // namespace

Result<PracticeRound> PracticeDesk::kept_round(const std::string& id) const {
  if (!check_handle(handle_of(id))) return no_round(id);
  auto record = read_apprentice(folder_, handle_of(id));
  if (!record && record.error().code == ErrorCode::kNotFound) return no_round(id);
  if (!record) return fail(record.error());
  const PracticeRound* round = round_in(*record, id);
  if (round == nullptr) return no_round(id);
  return *round;
}

Result<PracticeRound> PracticeDesk::change_round(
    const std::string& id,
    const std::function<Result<void>(PracticeRound&, ApprenticeRecord&)>& change) const {
  // Nothing is made for a round that is not there.
  if (const auto there = kept_round(id); !there) return fail(there.error());
  PracticeRound changed;
  const auto kept =
      change_apprentice(folder_, handle_of(id), [&](ApprenticeRecord& record) -> Result<void> {
        PracticeRound* round = round_in(record, id);
        if (round == nullptr) return no_round(id);
        if (auto done = change(*round, record); !done) return done;
        changed = *round;
        return {};
      });
  if (!kept) return fail(kept.error());
  return changed;
}

Result<RoundView> PracticeDesk::view(const PracticeRound& round) const {
  RoundView view;
  view.id = round.id;
  view.kind = round.kind;
  view.difficulty = round.difficulty;
  view.choices = round.choices;
  view.steps = round.steps;
  view.open = round.committed.empty() ? YesNo::kYes : YesNo::kNo;
  if (round.case_ref.empty()) {
    view.about = round.subject;
    return view;
  }
  const auto stored = ground_.store.read(round.case_ref);
  if (!stored) return fail(stored.error());
  view.arrival = as_it_came_in(stored->record);
  return view;
}

Result<RoundView> PracticeDesk::start(const RoundWish& wish) const {
  PracticeRound started;
  const auto kept =
      change_apprentice(folder_, wish.apprentice, [&](ApprenticeRecord& record) -> Result<void> {
        std::mt19937_64 random(seed_of(wish, record));
        auto round = drawn_exercise(wish, record, ground_, random);
        if (!round) return fail(round.error());
        round->id = fresh_id(wish.apprentice);
        ++record.rounds_started;
        record.rounds.push_back(*round);
        started = std::move(*round);
        return {};
      });
  if (!kept) return fail(kept.error());
  return view(started);
}

Result<RoundView> PracticeDesk::read(const std::string& id) const {
  const auto round = kept_round(id);
  if (!round) return fail(round.error());
  return view(*round);
}

Result<RoundView> PracticeDesk::believe(const std::string& id,
                                        const std::vector<StatedBelief>& beliefs) const {
  const auto round = change_round(id, [&](PracticeRound& open, ApprenticeRecord&) -> Result<void> {
    if (auto may = require_steps(open, "belief"); !may) return may;
    PracticeStep step;
    for (std::size_t i = 0; i < beliefs.size() && i <= kMostBeliefs; ++i) {
      auto cause = seen_cause(beliefs[i].cause, fmt::format("/beliefs/{}", i), ground_);
      if (!cause) return fail(cause.error());
      step.beliefs.push_back({std::move(*cause), beliefs[i].percent});
    }
    if (auto checked = check_beliefs(step.beliefs); !checked) return checked;
    open.steps.push_back(std::move(step));
    return {};
  });
  if (!round) return fail(round.error());
  return view(*round);
}

Result<RoundView> PracticeDesk::check(const std::string& id, std::string_view words) const {
  const auto check = named_check(words);
  if (!check) return fail(check.error());
  const auto round = change_round(id, [&](PracticeRound& open, ApprenticeRecord&) -> Result<void> {
    if (auto may = require_steps(open, "check"); !may) return may;
    const auto asked = [&](const PracticeStep& each) { return each.check == *check; };
    if (std::any_of(open.steps.begin(), open.steps.end(), asked)) return {};
    const auto practised = case_of(open, ground_);
    if (!practised) return fail(practised.error());
    PracticeStep step{StepKind::kCheck, {}, *check, "", "", YesNo::kNo};
    if (unsafe_checks(practised->arrival, {}, ground_.vocabulary).contains(*check)) {
      step.unsafe = YesNo::kYes;
    } else {
      const CheckAnswer answer = answer_of_check(practised->record, *check, ground_.vocabulary);
      step.verdict = answer.verdict;
      step.reading = answer.reading;
    }
    open.steps.push_back(std::move(step));
    return {};
  });
  if (!round) return fail(round.error());
  return view(*round);
}

Result<PracticeDesk::Committed> PracticeDesk::commit(const std::string& id,
                                                     const Commitment& commitment) const {
  Committed out;
  const auto round =
      change_round(id, [&](PracticeRound& open, ApprenticeRecord& record) -> Result<void> {
        if (auto may = require_open(open); !may) return may;
        auto committed = choice_committed(open, commitment);
        if (!committed) return fail(committed.error());
        open.committed = std::move(*committed);
        auto judged = judged_round(open, ground_);
        if (!judged) return fail(judged.error());
        out.feedback = std::move(judged->feedback);
        out.feedback.due = learnt(record, std::move(judged->result));
        return {};
      });
  if (!round) return fail(round.error());
  auto shown = view(*round);
  if (!shown) return fail(shown.error());
  out.round = std::move(*shown);
  return out;
}

Result<PracticeDesk::Committed> PracticeDesk::feedback(const std::string& id) const {
  const auto round = kept_round(id);
  if (!round) return fail(round.error());
  if (round->committed.empty()) {
    return fail(ErrorCode::kConflict, id, "is not committed yet; feedback comes after");
  }
  const auto record = read_apprentice(folder_, handle_of(id));
  if (!record) return fail(record.error());
  auto judged = judged_round(*round, ground_);
  if (!judged) return fail(judged.error());
  auto shown = view(*round);
  if (!shown) return fail(shown.error());
  judged->feedback.due = due_of(*record, *round);
  return Committed{std::move(*shown), std::move(judged->feedback)};
}

Result<std::string> PracticeDesk::choice_committed(const PracticeRound& round,
                                                   const Commitment& commitment) const {
  const auto refuse = [](std::string place, std::string why) {
    return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
  };
  if (round.kind == PracticeKind::kCause) {
    if (commitment.cause.empty()) return refuse("/cause", "expected the cause you commit to");
    const auto stated = [](const PracticeStep& each) { return each.kind == StepKind::kBelief; };
    if (std::none_of(round.steps.begin(), round.steps.end(), stated)) {
      return fail(ErrorCode::kConflict, round.id,
                  "no belief was stated yet; say in percent what you believe, then commit");
    }
    return seen_cause(commitment.cause, "/cause", ground_);
  }
  if (round.kind == PracticeKind::kCheckTrust) {
    const double percent = commitment.percent.value_or(-1);
    if (!std::isfinite(percent) || percent < 0 || percent > 100) {
      return refuse("/percent", "expected a percentage, 0 to 100");
    }
    return fmt::format("{:.6g}", percent);
  }
  const int choice = commitment.choice.value_or(0);
  if (choice < 1 || static_cast<std::size_t>(choice) > round.choices.size()) {
    return refuse("/choice",
                  fmt::format("expected the number of a choice, 1 to {}", round.choices.size()));
  }
  return round.choices[static_cast<std::size_t>(choice - 1)];
}

Result<std::string> PracticeDesk::named_check(std::string_view words) const {
  const Vocabulary& vocabulary = ground_.vocabulary;
  if (vocabulary.find(EntryKind::kCheck, words) != nullptr) {
    return vocabulary.canonical(EntryKind::kCheck, words);
  }
  if (words.find_first_not_of(' ') == words.npos) {
    return fail(ErrorCode::kInvalidInput, "/check", "expected the name of a check");
  }
  const auto found = vocabulary_search(vocabulary, {std::string(words), EntryKind::kCheck}).matches;
  const auto whole = std::count_if(found.begin(), found.end(), [](const VocabularyMatch& each) {
    return each.by == MatchedBy::kWholePhrase;
  });
  if (found.size() == 1 || whole == 1) {
    return vocabulary.canonical(EntryKind::kCheck, found.front().entry->id);
  }
  std::vector<std::string> offered;
  for (const VocabularyMatch& each : found) {
    if (offered.size() < kChecksOfferedInErrors) offered.push_back(each.entry->name);
  }
  if (offered.empty()) {
    for (const std::string& near : near_ids(vocabulary, EntryKind::kCheck, words)) {
      offered.push_back(vocabulary.display_name(EntryKind::kCheck, near));
    }
  }
  std::string why = found.empty() ? fmt::format("there is no check called \"{}\"", words)
                                  : fmt::format("\"{}\" leaves open which check", words);
  if (!offered.empty()) why += fmt::format("; near: {}", fmt::join(offered, "; "));
  return fail(ErrorCode::kInvalidInput, "/check", std::move(why));
}

Result<std::vector<std::string>> PracticeDesk::causes_like(std::string_view words) const {
  const Ledger& ledger = ground_.snapshot.ledger();
  const auto seen = ledger.by_cause({});
  if (!seen) return fail(seen.error());
  const auto stems = stems_of(words);
  std::vector<std::string> names;
  for (CauseNumber c = 0; c < seen->size(); ++c) {
    std::string name = display_cause_key(ledger.causes().key(c), ground_.vocabulary);
    if ((*seen)[c] > 0 && names_fit(stems, name)) names.push_back(std::move(name));
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<std::string> PracticeDesk::checks_like(std::string_view words) const {
  VocabularySearch search{std::string(words), EntryKind::kCheck};
  search.limit = SIZE_MAX;
  std::vector<std::string> names;
  for (const VocabularyMatch& each : vocabulary_search(ground_.vocabulary, search).matches) {
    if (each.entry->alias_of.empty()) names.push_back(each.entry->name);
  }
  return names;
}

}  // namespace shoplore
