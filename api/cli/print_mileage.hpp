// Failure mileage for a terminal: the km of the cases, the curve with its fit, B10 and B50, what
// the shape says in words, and what a workshop cannot see. Distances are rounded to three figures;
// the JSON has them in full. Pure function, any thread.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "query/failure_mileage/failure_mileage.hpp"

namespace shoplore {

[[nodiscard]] std::string print_mileage(const FailureMileage& answer, const Vocabulary& vocabulary,
                                        const Page& page);

}  // namespace shoplore
