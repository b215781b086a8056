#include "query/lives/root_between.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>

namespace shoplore {

double root_between(const std::function<double(double)>& function, double low, double high) {
  constexpr int kBits = 50;
  std::uintmax_t most_steps = 200;
  const auto [left, right] = boost::math::tools::toms748_solve(
      function, low, high, boost::math::tools::eps_tolerance<double>(kBits), most_steps);
  return left + (right - left) / 2;
}

}  // namespace shoplore
