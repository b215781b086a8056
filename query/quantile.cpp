#include "query/quantile.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace shoplore {

double quantile(std::span<const double> ascending, double p) {
  assert(!ascending.empty() && p >= 0 && p <= 1);
  const double h = p * static_cast<double>(ascending.size() - 1);
  const auto below = static_cast<std::size_t>(std::floor(h));
  const std::size_t above = std::min(below + 1, ascending.size() - 1);
  const double part = h - static_cast<double>(below);
  return ascending[below] + part * (ascending[above] - ascending[below]);
}

}  // namespace shoplore
