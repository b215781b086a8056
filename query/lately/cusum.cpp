#include "query/lately/cusum.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

namespace shoplore {
namespace {

// Deviates and weights of a standard normal variable, exact for polynomials up to degree 9.
constexpr std::array<std::pair<double, double>, 5> kNormalRule{
    {{-2.8569700138728, 0.0112574113277},
     {-1.3556261799742, 0.2220759220057},
     {0, 0.5333333333333},
     {1.3556261799742, 0.2220759220057},
     {2.8569700138728, 0.0112574113277}}};

// P(X = 0), P(X = 1), ... until what is left is negligible.
std::vector<double> poisson_probabilities(double mean) {
  constexpr double kNegligible = 1e-9;
  std::vector<double> probabilities{std::exp(-mean)};
  for (double count = 1; count < mean || probabilities.back() > kNegligible; ++count) {
    probabilities.push_back(probabilities.back() * mean / count);
  }
  return probabilities;
}

// The sums' chances after one more month.
std::vector<double> stepped(const std::vector<double>& chances, const std::vector<double>& counts,
                            std::size_t reference_steps) {
  constexpr double kNegligible = 1e-12;
  const std::size_t highest = chances.size() - 1;
  std::vector<double> next(chances.size());
  for (std::size_t from = 0; from <= highest; ++from) {
    if (chances[from] < kNegligible) continue;
    std::size_t up = from;  // before the reference is taken off
    for (const double count : counts) {
      const std::size_t to = up > reference_steps ? std::min(up - reference_steps, highest) : 0;
      next[to] += chances[from] * count;
      up += kCusumSteps;
    }
  }
  return next;
}

}  // namespace

double poisson_reference(double usual, double risen) {
  assert(usual > 0 && usual < risen);
  return (risen - usual) / (std::log(risen) - std::log(usual));
}

std::vector<double> upper_cusum(std::span<const double> observations,
                                std::span<const double> references) {
  assert(observations.size() == references.size());
  std::vector<double> sums;
  double sum = 0;
  for (std::size_t i = 0; i < observations.size(); ++i) {
    sum = std::max(0.0, sum + observations[i] - references[i]);
    sums.push_back(sum);
  }
  return sums;
}

std::size_t rise_began(std::span<const double> sums) {
  std::size_t began = sums.size();
  while (began > 0 && sums[began - 1] > 0) --began;
  return began;
}

CusumChances::CusumChances(std::span<const double> usual_means, double events, double factor,
                           double highest) {
  assert(factor > 1 && highest > 0 && events > 0);
  std::vector<std::size_t> steps;
  for (const double mean : usual_means) {
    assert(mean > 0);
    steps.push_back(std::max(std::size_t{1},
                             static_cast<std::size_t>(std::lround(mean * factor * kCusumSteps))));
    references_.push_back(static_cast<double>(steps.back()) / kCusumSteps);
  }
  tail_.resize(static_cast<std::size_t>(std::ceil(highest * kCusumSteps)) + 1);
  const double deviation = 1 / std::sqrt(events);
  for (const auto& [deviate, weight] : kNormalRule) {
    const double times = std::exp(deviation * deviate);
    std::vector<double> chances(tail_.size());
    chances[0] = weight;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      chances = stepped(chances, poisson_probabilities(usual_means[i] * times), steps[i]);
    }
    std::transform(tail_.begin(), tail_.end(), chances.begin(), tail_.begin(), std::plus<>());
  }
  for (std::size_t i = tail_.size() - 1; i > 0; --i) tail_[i - 1] += tail_[i];
}

double CusumChances::at_least(double sum) const {
  if (std::isinf(sum)) return 0;
  const auto steps = static_cast<std::size_t>(std::ceil(std::max(0.0, sum) * kCusumSteps));
  return tail_[std::min(steps, tail_.size() - 1)];
}

double CusumChances::interval(double chance) const {
  const auto found =
      std::partition_point(tail_.begin(), tail_.end(), [&](double tail) { return tail > chance; });
  if (found == tail_.end()) return std::numeric_limits<double>::infinity();
  return static_cast<double>(found - tail_.begin()) / kCusumSteps;
}

}  // namespace shoplore
