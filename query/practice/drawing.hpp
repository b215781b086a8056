// Drawing by a seed, the same on every machine: the standard library's distributions and shuffle
// may differ from one to the next.
//
// Not for secrets. Pure but for the generator, which is one thread's.
#pragma once

#include <cstddef>
#include <random>
#include <utility>
#include <vector>

namespace shoplore {

// 0 to n - 1. The remainder's bias is below n / 2^64. Requires: n > 0.
[[nodiscard]] inline std::size_t drawn_below(std::size_t n, std::mt19937_64& random) {
  return static_cast<std::size_t>(random() % n);
}

template <class T>
void shuffle_drawn(std::vector<T>& values, std::mt19937_64& random) {
  for (std::size_t i = values.size(); i > 1; --i) {
    std::swap(values[i - 1], values[drawn_below(i, random)]);
  }
}

}  // namespace shoplore
