// Cautions for a terminal: a section of its own with a blank line before it, nothing when there are
// none. Pure function, any thread.
#pragma once

#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "query/answer.hpp"

namespace shoplore {

// In the order given, each with what calls for it.
[[nodiscard]] std::string print_cautions(const std::vector<Caution>& cautions, const Page& page);

}  // namespace shoplore
