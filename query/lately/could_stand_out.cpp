#include "query/lately/could_stand_out.hpp"

#include <algorithm>

namespace shoplore {

std::vector<bool> could_stand_out(std::span<const double> smallest_p, double level) {
  std::vector<double> sorted(smallest_p.begin(), smallest_p.end());
  std::sort(sorted.begin(), sorted.end());
  const auto reaching = [&](std::size_t k) {
    const auto end = std::upper_bound(sorted.begin(), sorted.end(), level / static_cast<double>(k));
    return static_cast<std::size_t>(end - sorted.begin());
  };
  std::size_t tests = 1;
  while (reaching(tests) > tests) ++tests;
  std::vector<bool> could;
  for (const double p : smallest_p) could.push_back(p <= level / static_cast<double>(tests));
  return could;
}

}  // namespace shoplore
