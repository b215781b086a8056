// openapi.json as compiled into the program: file name and text.
//
// Its source is made by indexer/embed.cmake at build time.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace shoplore {

[[nodiscard]] const std::vector<std::pair<std::string, std::string>>& openapi_files();

}  // namespace shoplore
