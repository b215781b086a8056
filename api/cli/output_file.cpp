#include "api/cli/output_file.hpp"

#include <cerrno>
#include <fstream>

#include "api/cli/input_file.hpp"

namespace shoplore {

Result<void> write_output(const std::string& file, const std::string& text) {
  errno = 0;
  std::ofstream out(file, std::ios::binary);
  if (!out) return fail(open_error(file, errno));
  out << text;
  out.close();
  if (!out) return fail(ErrorCode::kNoPermission, file, "could not be written to the end");
  return {};
}

}  // namespace shoplore
