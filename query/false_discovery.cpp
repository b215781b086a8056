#include "query/false_discovery.hpp"

#include <algorithm>
#include <numeric>

namespace shoplore {

std::vector<double> false_discovery_rates(std::span<const double> p_values) {
  const std::size_t count = p_values.size();
  std::vector<std::size_t> by_p(count);
  std::iota(by_p.begin(), by_p.end(), std::size_t{0});
  std::sort(by_p.begin(), by_p.end(),
            [&](std::size_t a, std::size_t b) { return p_values[a] < p_values[b]; });
  std::vector<double> rates(count);
  // From the largest p down, so that a smaller p never has the larger q.
  double smallest = 1;
  for (std::size_t rank = count; rank > 0; --rank) {
    const double p = p_values[by_p[rank - 1]];
    smallest = std::min(smallest, p * static_cast<double>(count) / static_cast<double>(rank));
    rates[by_p[rank - 1]] = smallest;
  }
  return rates;
}

std::vector<bool> tests_that_could_stand_out(std::span<const double> smallest_p, double level) {
  std::vector<double> sorted(smallest_p.begin(), smallest_p.end());
  std::sort(sorted.begin(), sorted.end());
  // The smallest number k of which no more than k could reach level / k.
  std::size_t kept = 1;
  const auto reaching = [&](std::size_t k) {
    const auto end =
        std::upper_bound(sorted.begin(), sorted.end(), level / static_cast<double>(k));
    return static_cast<std::size_t>(end - sorted.begin());
  };
  while (reaching(kept) > kept) ++kept;
  std::vector<bool> could;
  for (const double p : smallest_p) could.push_back(p <= level / static_cast<double>(kept));
  return could;
}

}  // namespace shoplore
