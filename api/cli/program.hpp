// The whole program behind main: arguments in, exit code out.
//
// Errors are printed here and only here: "shoplore VERB: place: message", problems indented.
#pragma once

#include <istream>
#include <ostream>
#include <string>
#include <vector>

namespace shoplore {

// `arguments` without the program's name. Looks at the environment (NO_COLOR, COLUMNS, TERM, the
// shop's) and at whether standard output and error are terminals.
[[nodiscard]] int run_program(const std::vector<std::string>& arguments, std::istream& in,
                              std::ostream& out, std::ostream& err);

}  // namespace shoplore
