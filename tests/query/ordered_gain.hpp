// How good the order of a list is, what is worth most wanted first.
//
// Discounted gain: the sum of gain_i / log2(i + 1), i from 1 (the form of C. Burges and others,
// "Learning to rank using gradient descent", 2005, without its exponent); normalised by that of
// the same gains in the best order.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

namespace shoplore::testing {

[[nodiscard]] inline double discounted_gain(const std::vector<double>& gains) {
  double sum = 0;
  for (std::size_t i = 0; i < gains.size(); ++i) {
    sum += gains[i] / std::log2(static_cast<double>(i) + 2);
  }
  return sum;
}

// Of the first `shown`, against the best order of `all`. Requires: `all` has a gain above 0.
[[nodiscard]] inline double normalised_gain(std::vector<double> gains, std::vector<double> all,
                                            std::size_t shown) {
  std::sort(all.begin(), all.end(), std::greater<>());
  all.resize(std::min(shown, all.size()));
  gains.resize(std::min(shown, gains.size()));
  return discounted_gain(gains) / discounted_gain(all);
}

}  // namespace shoplore::testing
