// The built-in vocabulary files as compiled into the program: file name and text of each.
//
// Its source is made by indexer/embed.cmake at build time.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace shoplore {

// In name order.
[[nodiscard]] const std::vector<std::pair<std::string, std::string>>& built_in_vocabulary_files();

}  // namespace shoplore
