#include "api/wire/practice_json.hpp"

#include "api/wire/practice_words.hpp"
#include "api/wire/request_json.hpp"
#include "api/wire/share_form.hpp"
#include "indexer/case_json.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<StatedBelief> auto& b) {
  io.text("cause", b.cause);
  io.required("percent", b.percent);
}

template <class Io>
void fields(Io& io, Of<Commitment> auto& c) {
  io.text("cause", c.cause);
  io.optional("choice", c.choice);
  io.optional("percent", c.percent);
}

namespace {

struct WishForm {
  std::string apprentice;
  PracticeKind kind = PracticeKind::kCause;
  std::optional<Difficulty> difficulty;
  std::optional<std::int64_t> seed;
};

template <class Io>
void fields(Io& io, Of<WishForm> auto& w) {
  io.required("apprentice", w.apprentice);
  io.defaulted("kind", w.kind);
  io.optional("difficulty", w.difficulty);
  io.optional("seed", w.seed);
}

struct BeliefsForm {
  std::vector<StatedBelief> beliefs;
};

template <class Io>
void fields(Io& io, Of<BeliefsForm> auto& b) {
  io.required("beliefs", b.beliefs);
}

struct CheckForm {
  std::string check;
};

template <class Io>
void fields(Io& io, Of<CheckForm> auto& c) {
  io.required("check", c.check);
}

class PracticeForms {
 public:
  explicit PracticeForms(const Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  Json round(const RoundView& round) const {
    Json form{{"id", round.id},
              {"kind", name_of(round.kind)},
              {"state", round.open == YesNo::kYes ? "open" : "committed"}};
    if (round.difficulty) form["difficulty"] = name_of(*round.difficulty);
    form["question"] = practice_question(round, vocabulary_);
    form["about"] = round.about;
    if (round.arrival) form["case"] = arrival(*round.arrival);
    form["choices"] = Json::array();
    for (const std::string& choice : round.choices) {
      form["choices"].push_back({{"number", form["choices"].size() + 1},
                                 {"id", choice},
                                 {"name", practice_choice(round.kind, choice, vocabulary_)}});
    }
    form["steps"] = Json::array();
    for (const PracticeStep& each : round.steps) form["steps"].push_back(step(each));
    return form;
  }

  Json feedback(PracticeKind kind, const PracticeFeedback& feedback) const {
    Json form{{"right", name_of(feedback.right)},
              {"points", feedback.points},
              {"grade", feedback.grade},
              {"next", format_date(feedback.due)}};
    if (!feedback.case_ref.empty()) form["ref"] = feedback.case_ref;
    if (feedback.counted) form["counted"] = share_form(*feedback.counted);
    if (kind == PracticeKind::kCause) {
      form["cause"] = cause(feedback.truth);
      add_case(form, feedback);
    } else if (!feedback.choices.empty()) {
      form["truth"] = {{"id", feedback.truth},
                       {"name", practice_choice(kind, feedback.truth, vocabulary_)}};
      add_choices(form, kind, feedback);
    }
    return form;
  }

  Json progress(const PracticeProgress& progress) const {
    Json kinds = Json::array(), weak = Json::array();
    for (const KindProgress& each : progress.kinds) {
      kinds.push_back({{"kind", name_of(each.kind)},
                       {"rounds", each.rounds},
                       {"right", each.right},
                       {"points", each.points}});
    }
    for (const SymptomProgress& each : progress.weak) {
      weak.push_back({{"symptom", each.symptom},
                      {"name", vocabulary_.display_name(EntryKind::kSymptom, each.symptom)},
                      {"rounds", each.rounds},
                      {"points", each.points}});
    }
    return {{"apprentice", progress.apprentice},
            {"kinds", kinds},
            {"points", progress.points},
            {"records_points", progress.records_points},
            {"warnings_not_heeded", progress.unheeded},
            {"calibration", calibration(progress.calibration)},
            {"mastered", patterns(progress.mastered)},
            {"to_learn", patterns(progress.to_learn)},
            {"weak", weak}};
  }

 private:
  // Without what every record has and a case as it came in has not.
  static Json arrival(const Case& shown) {
    Json form = Json::parse(case_to_json(shown));
    for (const char* key : {"schema", "ref", "state"}) form.erase(key);
    return form;
  }

  Json cause(const std::string& key) const {
    const CauseParts parts = cause_parts(key);
    return {{"component", parts.component},
            {"failure", parts.failure},
            {"name", display_cause_key(key, vocabulary_)}};
  }

  Json beliefs(const std::vector<Belief>& beliefs) const {
    Json list = Json::array();
    for (const Belief& each : beliefs) {
      Json form = cause(each.cause);
      form["percent"] = each.percent;
      list.push_back(std::move(form));
    }
    return list;
  }

  Json step(const PracticeStep& step) const {
    if (step.kind == StepKind::kBelief) {
      return {{"kind", name_of(step.kind)}, {"beliefs", beliefs(step.beliefs)}};
    }
    const char* const state = step.unsafe == YesNo::kYes ? "unsafe"
                              : step.verdict.empty()     ? "not_recorded"
                                                         : "answered";
    return {{"kind", name_of(step.kind)},
            {"check", step.check},
            {"name", vocabulary_.display_name(EntryKind::kCheck, step.check)},
            {"state", state},
            {"verdict", step.verdict},
            {"answer", practice_answer(step)}};
  }

  static Json score(const ProperScore& score) {
    return {{"points", score.points}, {"brier", score.brier}, {"log", score.log}};
  }

  Json moment(const FeedbackStep& step) const {
    Json records = Json::array();
    for (const LeadingCause& each : step.records) {
      Json form = cause(each.component + ":" + each.failure);
      form["probability"] = each.probability;
      records.push_back(std::move(form));
    }
    return {{"check", step.check},
            {"verdict", step.verdict},
            {"beliefs", beliefs(step.beliefs)},
            {"points", step.points ? Json(*step.points) : Json(nullptr)},
            {"records", records},
            {"records_points", step.records_points},
            {"not_in_these_records", step.not_in_these_records},
            {"best_check", step.best_check},
            {"best_minutes", step.best_minutes}};
  }

  void add_case(Json& form, const PracticeFeedback& feedback) const {
    form["score"] = score(*feedback.score);
    form["records_score"] = score(*feedback.records_score);
    form["steps"] = Json::array();
    for (const FeedbackStep& each : feedback.steps) form["steps"].push_back(moment(each));
    form["minutes"] = feedback.minutes;
    form["best_minutes"] = feedback.best_minutes;
    form["best_checks"] = feedback.best_checks;
    form["watch_out"] = Json::array();
    for (const PracticeWarning& each : feedback.warnings) {
      form["watch_out"].push_back({{"kind", name_of(each.warning.kind)},
                                   {"text", each.warning.text},
                                   {"about", each.warning.about},
                                   {"share", share_form(each.warning.share)},
                                   {"heeded", name_of(each.heeded)}});
    }
  }

  void add_choices(Json& form, PracticeKind kind, const PracticeFeedback& feedback) const {
    form["choices"] = Json::array();
    for (const ChoiceFeedback& each : feedback.choices) {
      Json choice{{"id", each.choice},
                  {"name", practice_choice(kind, each.choice, vocabulary_)},
                  {"points", each.points}};
      if (each.share) choice["came_back"] = share_form(*each.share);
      if (each.minutes) choice["minutes"] = *each.minutes;
      if (each.information) choice["information"] = *each.information;
      form["choices"].push_back(std::move(choice));
    }
  }

  static Json calibration(const Calibration& calibration) {
    Json bins = Json::array();
    for (const ReliabilityBin& bin : calibration.bins) {
      if (bin.count == 0) continue;
      bins.push_back({{"parts", bin.count}, {"said", bin.said}, {"was_so", bin.right}});
    }
    return {{"rounds", calibration.rounds},
            {"word", name_of(calibration.word)},
            {"text", calibration_sentence(calibration)},
            {"said_of_first", calibration.said_of_first},
            {"first_was_so", share_form(calibration.first_was_so)},
            {"error", calibration.error},
            {"reliability", bins}};
  }

  Json patterns(const std::vector<PatternProgress>& patterns) const {
    Json list = Json::array();
    for (const PatternProgress& each : patterns) {
      Json form = cause(each.cause);
      form["rounds"] = each.rounds;
      form["points"] = each.points;
      form["next"] = format_date(each.due);
      list.push_back(std::move(form));
    }
    return list;
  }

  const Vocabulary& vocabulary_;
};

template <class Form>
Result<Form> request_from(std::string_view text) {
  const auto json = parse_json(text, kMaxRequestBytes);
  if (!json) return fail(json.error());
  return struct_from_json<Form>(*json, "the request");
}

}  // namespace

std::string round_json(const RoundView& round, const Vocabulary& vocabulary) {
  return PracticeForms(vocabulary).round(round).dump();
}

std::string committed_json(const PracticeDesk::Committed& committed, const Vocabulary& vocabulary) {
  const PracticeForms forms(vocabulary);
  return Json{{"round", forms.round(committed.round)},
              {"feedback", forms.feedback(committed.round.kind, committed.feedback)}}
      .dump();
}

std::string progress_json(const PracticeProgress& progress, const Vocabulary& vocabulary) {
  return PracticeForms(vocabulary).progress(progress).dump();
}

Result<RoundWish> round_wish_from_json(std::string_view text) {
  const auto form = request_from<WishForm>(text);
  if (!form) return fail(form.error());
  if (const auto checked = check_handle(form->apprentice); !checked) {
    return fail(ErrorCode::kInvalidInput, "/apprentice", checked.error().message);
  }
  RoundWish wish{form->apprentice, form->kind, form->difficulty, {}};
  if (form->seed) wish.seed = static_cast<std::uint64_t>(*form->seed);
  return wish;
}

Result<std::vector<StatedBelief>> beliefs_from_json(std::string_view text) {
  auto form = request_from<BeliefsForm>(text);
  if (!form) return fail(form.error());
  return std::move(form->beliefs);
}

Result<std::string> asked_check_from_json(std::string_view text) {
  auto form = request_from<CheckForm>(text);
  if (!form) return fail(form.error());
  return std::move(form->check);
}

Result<Commitment> commitment_from_json(std::string_view text) {
  auto form = request_from<Commitment>(text);
  if (!form) return fail(form.error());
  const int said = (form->cause.empty() ? 0 : 1) + (form->choice ? 1 : 0) + (form->percent ? 1 : 0);
  if (said != 1) {
    return fail(ErrorCode::kInvalidInput, "", "expected one of cause, choice and percent");
  }
  return std::move(*form);
}

}  // namespace shoplore
