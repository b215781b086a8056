// A small random generator and its draws, the same on every machine and compiler.
//
// The standard's engines are portable but its distributions are not, and a demo must be the same
// bytes everywhere. Not for keys or anything secret.
// A plain value; one thread at a time.
#pragma once

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace shoplore {

class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  // SplitMix64: Steele, Lea & Flood, "Fast splittable pseudorandom number generators", 2014.
  std::uint64_t next();

  // In [0, 1), 53 random bits.
  double uniform();

  // In [low, high), uniform.
  double between(double low, double high) { return low + (high - low) * uniform(); }

  // In [low, high], both included. Requires: low <= high.
  std::int64_t integer(std::int64_t low, std::int64_t high);

  bool chance(double probability) { return uniform() < probability; }

  // Index of a weight, in proportion to the weights. Requires: their sum is above 0.
  std::size_t pick(std::span<const double> weights);

  // One of the options, each as likely. Requires: not empty.
  template <class T>
  const T& one_of(const std::vector<T>& options) {
    assert(!options.empty());
    return options[static_cast<std::size_t>(
        integer(0, static_cast<std::int64_t>(options.size()) - 1))];
  }

 private:
  std::uint64_t state_;
};

}  // namespace shoplore
