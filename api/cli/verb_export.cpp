#include "api/cli/output_file.hpp"
#include "api/cli/verbs.hpp"

namespace shoplore {

Result<ExitCode> run(const ExportOptions& options, Session& session) {
  const auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  if (options.file == "-") {
    const auto written = records->export_to(session.out);
    if (!written) return fail(written.error());
    return ExitCode::kAnswered;
  }
  std::int64_t cases = 0;
  const auto written = write_output(options.file, [&](std::ostream& out) -> Result<void> {
    const auto exported = records->export_to(out);
    if (!exported) return fail(exported.error());
    cases = *exported;
    return {};
  });
  if (!written) return fail(written.error());
  session.out << thousands(cases) << " cases written to " << options.file << "\n";
  return ExitCode::kAnswered;
}

}  // namespace shoplore
