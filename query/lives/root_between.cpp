#include "query/lives/root_between.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace shoplore {

double root_between(const std::function<double(double)>& function, double low, double high) {
  constexpr int kBits = 50;
  const double at_low = function(low), at_high = function(high);
  // The library would throw; the caller saw a sign that rounding has since taken away.
  if (at_low * at_high > 0) {
    return std::abs(at_low) < std::abs(at_high) ? low : high;
  }
  std::uintmax_t most_steps = 200;
  const auto [left, right] = boost::math::tools::toms748_solve(
      function, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(kBits),
      most_steps);
  return left + (right - left) / 2;
}

}  // namespace shoplore
