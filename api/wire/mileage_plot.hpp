// The survival curve of a failure as a plot: counted, with its interval, and the fitted Weibull.
//
// Without a curve (too few failures) the plot is empty and its note says why.
// Pure function, any thread.
#pragma once

#include "api/wire/plot.hpp"
#include "query/failure_mileage/failure_mileage.hpp"

namespace shoplore {

// Of the part as found (answer.first).
[[nodiscard]] Plot mileage_plot(const FailureMileage& answer, const Vocabulary& vocabulary);

}  // namespace shoplore
