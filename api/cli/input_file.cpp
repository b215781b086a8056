#include "api/cli/input_file.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <fstream>
#include <system_error>

namespace shoplore {

Error open_error(const std::string& file, int error_number) {
  const auto code = error_number == ENOENT ? ErrorCode::kNotFound : ErrorCode::kNoPermission;
  return {code, file, "cannot be opened: " + std::generic_category().message(error_number), {}};
}

Result<std::string> read_input(const std::string& file, std::istream& standard_input,
                               std::size_t max_bytes) {
  std::ifstream opened;
  if (file != "-") {
    errno = 0;
    opened.open(file, std::ios::binary);
    if (!opened) return fail(open_error(file, errno));
  }
  std::istream& in = file == "-" ? standard_input : opened;
  std::string text;
  char block[16 * 1024];
  while (in.read(block, sizeof(block)) || in.gcount() > 0) {
    text.append(block, static_cast<std::size_t>(in.gcount()));
    if (text.size() > max_bytes) {
      return fail(ErrorCode::kTooLarge, file == "-" ? "standard input" : file,
                  fmt::format("at most {} bytes are taken", max_bytes));
    }
  }
  if (in.bad()) return fail(ErrorCode::kInvalidInput, file, "cannot be read to the end");
  return text;
}

}  // namespace shoplore
