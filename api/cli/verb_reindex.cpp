#include <fmt/format.h>

#include "api/cli/verbs.hpp"

namespace shoplore {

Result<ExitCode> run(const ReindexOptions& options, Session& session) {
  auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto report = records->reindex(std::chrono::minutes(1));
  if (!report) return fail(report.error());
  session.out << (options.output == Output::kJson
                      ? fmt::format("{{\"revision\":{}}}\n", report->revision.value)
                      : fmt::format("index built anew from the records, revision {}\n",
                                    report->revision.value));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
