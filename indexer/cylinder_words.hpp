// The cylinder that a finding names: "misfire cylinder 3", "no. 3 cylinder misfire".
//
// Does not keep the number: a case holds the finding, and its words hold the cylinder.
// Pure functions, any thread.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// The tokens of a finding and those of the cylinder directly before or after it that nobody
// claimed; the finding's own where there are none.
[[nodiscard]] TokenRange with_cylinder(const NotePage& page, TokenRange range);

}  // namespace shoplore
