#include "query/intervals.hpp"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <cassert>
#include <cmath>

namespace shoplore {
namespace {

// Plain double is exact to more digits than anyone shows, and several times faster.
using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

double tail(double confidence) {
  assert(confidence > 0 && confidence < 1);
  return (1 - confidence) / 2;
}

}  // namespace

double two_sided_z(double confidence) {
  assert(confidence > 0 && confidence < 1);
  return std::sqrt(2.0) * boost::math::erf_inv(confidence, Policy());
}

double beta_quantile(double p, double a, double b) {
  assert(p >= 0 && p <= 1 && a > 0 && b > 0);
  return boost::math::ibeta_inv(a, b, p, Policy());
}

Interval jeffreys(std::uint64_t successes, std::uint64_t trials, double confidence) {
  assert(successes <= trials);
  const double alpha = tail(confidence);
  const double a = static_cast<double>(successes) + 0.5;
  const double b = static_cast<double>(trials - successes) + 0.5;
  return {successes == 0 ? 0 : beta_quantile(alpha, a, b),
          successes == trials ? 1 : beta_quantile(1 - alpha, a, b)};
}

Interval wilson(std::uint64_t successes, std::uint64_t trials, double confidence) {
  assert(successes <= trials);
  if (trials == 0) return {};
  const double z = two_sided_z(confidence);
  const double n = static_cast<double>(trials);
  const double share = static_cast<double>(successes) / n;
  const double centre = share + z * z / (2 * n);
  const double half = z * std::sqrt(share * (1 - share) / n + z * z / (4 * n * n));
  const double scale = 1 + z * z / n;
  // At the ends centre and half are equal in theory; rounding must not leave 1e-17.
  return {successes == 0 ? 0 : std::max(0.0, (centre - half) / scale),
          successes == trials ? 1 : std::min(1.0, (centre + half) / scale)};
}

Interval clopper_pearson(std::uint64_t successes, std::uint64_t trials, double confidence) {
  assert(successes <= trials);
  const double alpha = tail(confidence);
  const double x = static_cast<double>(successes);
  const double misses = static_cast<double>(trials - successes);
  return {successes == 0 ? 0 : beta_quantile(alpha, x, misses + 1),
          successes == trials ? 1 : beta_quantile(1 - alpha, x + 1, misses)};
}

}  // namespace shoplore
