#include "api/cli/print_case.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/record_json.hpp"

namespace shoplore {

Result<ExitCode> run(const ShowOptions& options, Session& session) {
  const auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto stored = records->store().read(options.ref);
  if (!stored) return fail(stored.error());
  const bool json = options.output == Output::kJson;
  if (options.what == ShowOptions::What::kRecord) {
    session.out << (json ? case_to_json(stored->record) + "\n"
                         : print_case(*stored, records->vocabulary(), session.page));
    return ExitCode::kAnswered;
  }
  const auto history = records->store().history(stored->id);
  if (!history) return fail(history.error());
  session.out << (json ? history_json(*history) + "\n" : print_history(*history, session.page));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
