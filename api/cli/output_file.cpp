#include "api/cli/output_file.hpp"

#include <cerrno>
#include <cstdio>
#include <fstream>

#include "api/cli/input_file.hpp"

namespace shoplore {

Result<void> write_output(const std::string& file,
                          const std::function<Result<void>(std::ostream&)>& write) {
  const std::string part = file + ".part";
  errno = 0;
  std::ofstream out(part, std::ios::binary);
  if (!out) return fail(open_error(part, errno));
  const auto written = write(out);
  out.close();
  if (!written || !out || std::rename(part.c_str(), file.c_str()) != 0) {
    std::remove(part.c_str());
    if (!written) return fail(written.error());
    return fail(ErrorCode::kNoPermission, file, "could not be written to the end");
  }
  return {};
}

Result<void> write_output(const std::string& file, const std::string& text) {
  return write_output(file, [&](std::ostream& out) -> Result<void> {
    out << text;
    return {};
  });
}

}  // namespace shoplore
