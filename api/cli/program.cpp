#include "api/cli/program.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>

#include "api/cli/verbs.hpp"

namespace shoplore {

namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

std::size_t width_of_output() {
  std::size_t width = 0;
  const std::string columns = environment("COLUMNS");
  std::from_chars(columns.data(), columns.data() + columns.size(), width);
  winsize size{};
  if (width == 0 && isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0) {
    width = size.ws_col;
  }
  if (width == 0) width = kDefaultWidth;
  return std::clamp(width, kMinWidth, kMaxWidth);
}

// https://no-color.org: any non-empty NO_COLOR switches colour off.
Colour colour_of_output() {
  const bool wanted = environment("NO_COLOR").empty() && environment("TERM") != "dumb";
  return wanted && isatty(STDOUT_FILENO) == 1 ? Colour::kOn : Colour::kOff;
}

int end_with(const Error& error, const std::string& verb, std::ostream& err) {
  err << "shoplore" << (verb.empty() ? "" : " ") << verb << ": " << describe(error) << "\n";
  return static_cast<int>(exit_code(error.code));
}

}  // namespace

int run_program(const std::vector<std::string>& arguments, std::istream& in, std::ostream& out,
                std::ostream& err) {
  auto parsed = parse_arguments(arguments);
  if (!parsed.invocation) return end_with(parsed.invocation.error(), parsed.verb, err);
  Session session{choose_shop_folder(parsed.invocation->shop),
                  in,
                  out,
                  err,
                  {width_of_output(), colour_of_output()},
                  isatty(STDERR_FILENO) == 1 ? Progress::kShown : Progress::kSilent};
  const auto ended = std::visit([&](const auto& options) { return run(options, session); },
                                parsed.invocation->command);
  out.flush();
  if (!ended) return end_with(ended.error(), parsed.verb, err);
  if (!out) {
    return end_with({ErrorCode::kNoPermission, "standard output", "could not be written to"},
                    parsed.verb, err);
  }
  return static_cast<int>(*ended);
}

}  // namespace shoplore
