// How long repairs lasted, for a terminal. Pure functions, any thread.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/outcomes/stayed_fixed.hpp"

namespace shoplore {

// "12-34 %".
[[nodiscard]] std::string interval_text(const Interval& interval);

// "97 % after 90 days (92-99 %), 93 % after a year (88-97 %)"; empty where no share is given.
[[nodiscard]] std::string still_fixed_text(const StayedFixed& done);

// "part 4, no reason written down 1"; empty where nothing came back.
[[nodiscard]] std::string comeback_reasons_text(const StayedFixed& done);

// What was done together, at most `most` rows: cases, how many came back of those heard of, how
// many were not heard of, and the share still fixed a year on.
[[nodiscard]] std::string stayed_fixed_table(const std::vector<StayedFixed>& all, std::size_t most,
                                             std::size_t indent, const Vocabulary& vocabulary,
                                             const Page& page);

}  // namespace shoplore
