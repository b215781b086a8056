#include "corpus-demo/random.hpp"

#include <algorithm>

namespace shoplore {

std::uint64_t Random::next() {
  state_ += 0x9e3779b97f4a7c15u;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

double Random::uniform() {
  return static_cast<double>(next() >> 11) * 0x1.0p-53;
}

std::int64_t Random::integer(std::int64_t low, std::int64_t high) {
  assert(low <= high);
  const auto width = static_cast<double>(high - low + 1);
  return std::min(high, low + static_cast<std::int64_t>(uniform() * width));
}

std::size_t Random::pick(std::span<const double> weights) {
  double total = 0;
  for (const double weight : weights) total += weight;
  assert(total > 0);
  double left = uniform() * total;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (left < weights[i]) return i;
    left -= weights[i];
  }
  // Rounding ate the last sliver: the last weight above zero.
  std::size_t last = weights.size() - 1;
  while (weights[last] <= 0) --last;
  return last;
}

}  // namespace shoplore
