#include "query/patterns/false_discovery.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace shoplore {
namespace {

// Positions of the p-values, smallest first.
std::vector<std::size_t> ascending(const std::vector<double>& p) {
  std::vector<std::size_t> order(p.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return p[a] < p[b]; });
  return order;
}

}  // namespace

std::vector<double> benjamini_hochberg(const std::vector<double>& p, std::uint64_t tested) {
  assert(tested >= p.size());
  const auto order = ascending(p);
  std::vector<double> adjusted(p.size());
  double least = 1;
  for (std::size_t rank = order.size(); rank > 0; --rank) {
    const std::size_t at = order[rank - 1];
    least = std::min(least, p[at] * static_cast<double>(tested) / static_cast<double>(rank));
    adjusted[at] = least;
  }
  return adjusted;
}

std::vector<double> holm(const std::vector<double>& p, std::uint64_t tested) {
  assert(tested >= p.size());
  const auto order = ascending(p);
  std::vector<double> adjusted(p.size());
  double most = 0;
  for (std::size_t before = 0; before < order.size(); ++before) {
    const std::size_t at = order[before];
    most = std::max(most, std::min(1.0, p[at] * static_cast<double>(tested - before)));
    adjusted[at] = most;
  }
  return adjusted;
}

}  // namespace shoplore
