// Writing what the command line names: a file, replaced if it is there. One thread.
#pragma once

#include <string>

#include "indexer/result.hpp"

namespace shoplore {

// kNotFound or kNoPermission, whose place is the file's name.
[[nodiscard]] Result<void> write_output(const std::string& file, const std::string& text);

}  // namespace shoplore
