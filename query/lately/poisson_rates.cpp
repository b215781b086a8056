// The binomial probabilities rise to the mode and fall after it, so the outcomes no likelier than
// the one seen are two tails; the end of the far one is found by halving.
#include "query/lately/poisson_rates.hpp"

#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cassert>
#include <cmath>
#include <limits>

namespace shoplore {
namespace {

using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct Binomial {
  double trials, chance;

  double log_probability(double k) const {
    return std::lgamma(trials + 1) - std::lgamma(k + 1) - std::lgamma(trials - k + 1) +
           k * std::log(chance) + (trials - k) * std::log1p(-chance);
  }
  // P(X <= k) and P(X >= k).
  double up_to(double k) const {
    if (k < 0) return 0;
    return k >= trials ? 1 : boost::math::ibetac(k + 1, trials - k, chance, Policy());
  }
  double from(double k) const {
    if (k > trials) return 0;
    return k <= 0 ? 1 : boost::math::ibeta(k, trials - k + 1, chance, Policy());
  }
};

// The first k in [low, high] for which `holds`; high + 1 when none. Requires: once it holds it
// holds for all that follow.
template <class Holds>
double first_where(double low, double high, const Holds& holds) {
  while (low <= high) {
    const double middle = std::floor((low + high) / 2);
    if (holds(middle))
      high = middle - 1;
    else
      low = middle + 1;
  }
  return low;
}

}  // namespace

double two_sided_binomial_p(std::uint64_t successes, std::uint64_t trials, double chance) {
  assert(successes <= trials && chance > 0 && chance < 1);
  const double k = static_cast<double>(successes), n = static_cast<double>(trials);
  const Binomial binomial{n, chance};
  const double most = binomial.log_probability(k) + std::log1p(1e-7);
  const double mode = std::min(std::floor((n + 1) * chance), n);
  if (k > mode) {
    const double end =
        first_where(0, mode, [&](double j) { return binomial.log_probability(j) > most; });
    return std::min(1.0, binomial.from(k) + binomial.up_to(end - 1));
  }
  if (k == mode) return 1;
  const double start =
      first_where(mode, n, [&](double j) { return binomial.log_probability(j) <= most; });
  return std::min(1.0, binomial.up_to(k) + binomial.from(start));
}

Interval poisson_mean_interval(std::uint64_t events, double confidence) {
  assert(confidence > 0 && confidence < 1);
  const double alpha = (1 - confidence) / 2, x = static_cast<double>(events);
  return {events == 0 ? 0 : boost::math::gamma_p_inv(x, alpha, Policy()),
          boost::math::gamma_p_inv(x + 1, 1 - alpha, Policy())};
}

RateRatio rate_ratio(const CountedEvents& first, const CountedEvents& second, double confidence) {
  assert(first.exposure > 0 && second.exposure > 0);
  const std::uint64_t all = first.events + second.events;
  if (all == 0) return {1, 0, kInfinity, 1};
  const double scale = second.exposure / first.exposure;
  const auto as_ratio = [&](double share) {
    return share >= 1 ? kInfinity : share / (1 - share) * scale;
  };
  const Interval share = clopper_pearson(first.events, all, confidence);
  const double chance = first.exposure / (first.exposure + second.exposure);
  return {as_ratio(static_cast<double>(first.events) / static_cast<double>(all)),
          as_ratio(share.low), as_ratio(share.high),
          two_sided_binomial_p(first.events, all, chance)};
}

}  // namespace shoplore
