// Quantiles of a handful of figures.
//
// Type 7 of Hyndman & Fan (The American Statistician 50, 1996, 361), which R and NumPy take by
// default: of x(1) <= ... <= x(n), with h = (n - 1) p + 1,
// x(floor h) + (h - floor h) (x(floor h + 1) - x(floor h)). Pure function, any thread.
#pragma once

#include <span>

namespace shoplore {

// Requires: ascending, not empty, 0 <= p <= 1.
[[nodiscard]] double quantile(std::span<const double> ascending, double p);

}  // namespace shoplore
