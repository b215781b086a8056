#include "api/cli/print_answer.hpp"
#include "api/cli/print_watch_out.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/answer_json.hpp"
#include "query/ask.hpp"

namespace shoplore {

namespace {

Result<Question> question_of(const AskOptions& options, const Records& records) {
  Question question;
  question.text = options.text;
  question.filter = options.filter;
  question.rows = options.rows;
  question.similar_cases = options.what == AskOptions::What::kWatchOut ? 0 : options.similar_cases;
  question.so_far = {{options.open.begin(), options.open.end()},
                     {options.not_possible.begin(), options.not_possible.end()}};
  question.agreed = options.agreed;
  question.day = today();
  auto token = records.token_of({options.vin, options.plate, ""});
  if (!token) return fail(token.error());
  question.vehicle = std::move(*token);
  if (options.case_ref.empty()) return question;
  auto stored = records.store().read(options.case_ref);
  if (!stored) return fail(stored.error());
  if (stored->record.state == CaseState::kClosed) {
    // It would be counted as evidence for itself.
    return fail(ErrorCode::kInvalidInput, options.case_ref,
                "is closed and among the cases counted; ask with an open case, or with its words");
  }
  question.record = std::move(stored->record);
  return question;
}

std::string shown(const Answer& answer, const AskOptions& options, const Vocabulary& vocabulary,
                  const Page& page) {
  const bool json = options.output == Output::kJson;
  if (options.what == AskOptions::What::kWatchOut) {
    return json ? watch_out_json(answer, vocabulary) + "\n" : print_watch_out(answer, page);
  }
  return json ? answer_json(answer, vocabulary) + "\n" : print_answer(answer, vocabulary, page);
}

}  // namespace

Result<ExitCode> run(const AskOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto question = question_of(options, *records);
  if (!question) return fail(question.error());
  const auto answer = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    return ask(*question, snapshot, records->store(), records->vocabulary(), records->recogniser());
  });
  if (!answer) return fail(answer.error());
  session.out << shown(*answer, options, records->vocabulary(), session.page);
  const bool found = options.what == AskOptions::What::kWatchOut ? !answer->watch_out.empty()
                                                                 : !answer->likely_causes.empty();
  return found ? ExitCode::kAnswered : ExitCode::kNothingFound;
}

}  // namespace shoplore
