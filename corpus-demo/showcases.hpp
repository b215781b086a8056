// Two dozen cases written by hand, each for one lesson: a turbo in vain, a coil without its seal, a
// look that misled, the same vehicle back.
//
// Fixed refs show-01 to show-24, fixed dates and tokens. They are part of every demo workshop,
// besides its drawn cases, and have no true pattern: their evidence was chosen, not drawn.
// Written as JSON, as a workshop would import them; one that cannot be read is a bug and asserts.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"

namespace shoplore {

// In the order of their refs.
[[nodiscard]] std::vector<Case> showcases();

// The same as written, one JSON object each.
[[nodiscard]] std::vector<std::string_view> engine_showcases();     // 01 to 09
[[nodiscard]] std::vector<std::string_view> electrics_showcases();  // 10 to 17
[[nodiscard]] std::vector<std::string_view> chassis_showcases();    // 18 to 24

}  // namespace shoplore
