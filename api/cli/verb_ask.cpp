#include "api/cli/print_answer.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/answer_json.hpp"
#include "query/ask.hpp"

namespace shoplore {

Result<ExitCode> run(const AskOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  Question question;
  question.text = options.text;
  question.filter = options.filter;
  question.rows = options.rows;
  question.similar_cases = options.similar_cases;
  question.so_far = {{options.open.begin(), options.open.end()},
                     {options.not_possible.begin(), options.not_possible.end()}};
  question.agreed = options.agreed;
  if (!options.case_ref.empty()) {
    auto stored = records->store().read(options.case_ref);
    if (!stored) return fail(stored.error());
    if (stored->record.state == CaseState::kClosed) {
      // It would be counted as evidence for itself.
      return fail(
          ErrorCode::kInvalidInput, options.case_ref,
          "is closed and among the cases counted; ask with an open case, or with its words");
    }
    question.record = std::move(stored->record);
  }
  const auto answer = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    return ask(question, snapshot, records->store(), records->vocabulary(), records->recogniser());
  });
  if (!answer) return fail(answer.error());
  session.out << (options.output == Output::kJson
                      ? answer_json(*answer, records->vocabulary()) + "\n"
                      : print_answer(*answer, records->vocabulary(), session.page));
  return answer->likely_causes.empty() ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

}  // namespace shoplore
