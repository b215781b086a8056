#include "api/cli/verbs.hpp"
#include "api/wire/record_json.hpp"

namespace shoplore {

Result<ExitCode> run(const VerifyOptions& options, Session& session) {
  auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto lines = records->verify();
  if (!lines) return fail(lines.error());
  if (options.output == Output::kJson) {
    session.out << findings_json(*lines) << "\n";
    return ExitCode::kAnswered;
  }
  for (const std::string& line : *lines) session.out << line << "\n";
  return ExitCode::kAnswered;
}

}  // namespace shoplore
