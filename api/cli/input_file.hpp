// Reading what the command line names: a file, or "-" for standard input. One thread.
#pragma once

#include <istream>
#include <string>

#include "indexer/result.hpp"

namespace shoplore {

// All of it, up to `max_bytes`; more is kTooLarge, a file that cannot be opened kNotFound or
// kNoPermission. The place is the file's name.
[[nodiscard]] Result<std::string> read_input(const std::string& file, std::istream& standard_input,
                                             std::size_t max_bytes);

// What kept a file from being opened for reading, as an Error naming it.
[[nodiscard]] Error open_error(const std::string& file, int error_number);

}  // namespace shoplore
