// A tail is summed outward from its end that is nearest the middle, each term from the one before,
// until a term adds nothing. Beyond the middle that tail would begin with terms too small for a
// double, so there it is 1 minus the other tail.
#include "query/patterns/exact_tests.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace shoplore {
namespace {

constexpr double kAddsNothing = 1e-17;  // of the sum so far

// first + first * ratio(at) + ...; ratio(x) leads from term x to the next one outward.
template <class Ratio>
double outward(double first, std::uint32_t steps, const Ratio& ratio) {
  double sum = first, term = first;
  for (std::uint32_t step = 0; step < steps; ++step) {
    term *= ratio(static_cast<double>(step));
    sum += term;
    if (term < sum * kAddsNothing) break;
  }
  return std::min(sum, 1.0);
}

}  // namespace

ExactTests::ExactTests(std::uint32_t most_cases) {
  log_factorial_.reserve(most_cases + 1);
  // Summed in long double: a million roundings to double would cost five digits of a small p.
  long double sum = 0;
  log_factorial_.push_back(0);
  for (std::uint32_t n = 1; n <= most_cases; ++n) {
    sum += std::log(static_cast<long double>(n));
    log_factorial_.push_back(static_cast<double>(sum));
  }
}

double ExactTests::log_choose(std::uint32_t of, std::uint32_t choose) const {
  return log_factorial_[of] - log_factorial_[choose] - log_factorial_[of - choose];
}

double ExactTests::fisher_more(const DiagnosticTable& table) const {
  assert(table.cases() < log_factorial_.size());
  const std::uint32_t positive = table.true_positive + table.false_positive;
  const std::uint32_t with = table.with_condition(), cases = table.cases();
  const std::uint32_t least = positive + with > cases ? positive + with - cases : 0;
  const std::uint32_t most = std::min(positive, with);
  if (table.true_positive <= least) return 1;
  const auto probability = [&](std::uint32_t x) {
    return std::exp(log_choose(with, x) + log_choose(cases - with, positive - x) -
                    log_choose(cases, positive));
  };
  const double p = positive, w = with, n = cases, x = table.true_positive;
  if (x >= p * w / n) {
    return outward(probability(table.true_positive), most - table.true_positive, [&](double step) {
      const double at = x + step;
      return (p - at) * (w - at) / ((at + 1) * (n - p - w + at + 1));
    });
  }
  const double below = x - 1;
  return 1 - outward(probability(table.true_positive - 1), table.true_positive - 1 - least,
                     [&](double step) {
                       const double at = below - step;
                       return at * (n - p - w + at) / ((p - at + 1) * (w - at + 1));
                     });
}

double ExactTests::binomial_more(std::uint32_t count, std::uint32_t out_of, double rate) const {
  assert(count <= out_of && out_of < log_factorial_.size() && rate > 0 && rate < 1);
  if (count == 0) return 1;
  const double n = out_of, odds = rate / (1 - rate);
  const auto probability = [&](std::uint32_t x) {
    return std::exp(log_choose(out_of, x) + x * std::log(rate) + (n - x) * std::log1p(-rate));
  };
  const double x = count;
  if (x >= n * rate) {
    return outward(probability(count), out_of - count,
                   [&](double step) { return (n - x - step) / (x + step + 1) * odds; });
  }
  const double below = x - 1;
  return 1 - outward(probability(count - 1), count - 1, [&](double step) {
           const double at = below - step;
           return at / (n - at + 1) / odds;
         });
}

}  // namespace shoplore
