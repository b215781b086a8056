#include <fmt/format.h>

#include <cerrno>
#include <fstream>

#include "api/cli/input_file.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/kept_lately.hpp"
#include "query/ranking/fit_in_shop.hpp"

namespace shoplore {
Result<ExitCode> run(const ImportOptions& options, Session& session) {
  auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  std::ifstream file;
  if (options.file != "-") {
    errno = 0;
    file.open(options.file, std::ios::binary);
    if (!file) return fail(open_error(options.file, errno));
  }
  const bool shown = session.progress == Progress::kShown;
  const auto report =
      records->import(options.file == "-" ? session.in : file, [&](std::int64_t lines) {
        if (shown) session.err << "\r" << thousands(lines) << " lines stored" << std::flush;
      });
  if (shown) session.err << "\n";
  if (!report) return fail(report.error());
  for (const std::string& warning : report->warnings) {
    session.err << "shoplore import: " << warning << "\n";
  }
  if (shown) session.err << "indexing\n";
  const auto followed = records->follow(std::chrono::minutes(1));
  if (!followed && followed.error().code != ErrorCode::kBusy) return fail(followed.error());
  const auto fitted = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    if (shown) session.err << "fitting the ranking where that is due\n";
    return fit_when_due(session.folder, snapshot, records->store(), records->vocabulary());
  });
  if (!fitted) return fail(fitted.error());
  const auto lately = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    return make_lately(session.folder, snapshot.ledger(), snapshot.revision(), today());
  });
  // The cases are stored: that the rest could not be kept is no reason to call it failed.
  if (!lately) session.err << "shoplore import: " << describe(lately.error()) << "\n";
  session.out << (options.output == Output::kJson
                      ? fmt::format("{{\"added\":{},\"same_already\":{}}}\n", report->added,
                                    report->same_already)
                      : fmt::format("{} cases added, {} were there already\n",
                                    thousands(report->added), thousands(report->same_already)));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
