// Values that a control unit kept with a fault code: "RPM 2200", "Coolant 88 C", "Load: 64 %",
// "Distance since fault 120 km", several on a line or one.
//
// A line is read whole or not at all: names and numbers by turns, at least one name of the usual
// ones. Units are kept as written; a number may have none.
// Pure functions, any thread; linear.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"

namespace shoplore {

// Empty when the line is anything else.
[[nodiscard]] std::vector<FreezeFrameValue> read_freeze_frame(std::string_view line);

}  // namespace shoplore
