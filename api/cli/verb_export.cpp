#include <cerrno>
#include <cstdio>
#include <fstream>

#include "api/cli/input_file.hpp"
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
  // Named only when whole, so that half an export is never taken for one.
  const std::string part = options.file + ".part";
  errno = 0;
  std::ofstream file(part, std::ios::binary);
  if (!file) return fail(open_error(part, errno));
  const auto written = records->export_to(file);
  file.close();
  if (!written || !file || std::rename(part.c_str(), options.file.c_str()) != 0) {
    std::remove(part.c_str());
    if (!written) return fail(written.error());
    return fail(ErrorCode::kNoPermission, options.file, "could not be written to the end");
  }
  session.out << thousands(*written) << " cases written to " << options.file << "\n";
  return ExitCode::kAnswered;
}

}  // namespace shoplore
