// Random lives for the tests of curves and fits: seeded, with ties, late entry and censoring.
#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "query/lives/lives.hpp"

namespace shoplore::testing {

struct LifeLaw {
  double shape = 2, scale = 100;  // Weibull
  double late_share = 0;          // of lives first seen at an age up to 0.8 scale
  bool whole_numbers = false;     // makes ties
};

// As a workshop would see them: what failed before its entry is not there at all.
inline std::vector<Life> draw_lives(std::size_t count, const LifeLaw& law,
                                    std::mt19937_64& random) {
  std::uniform_real_distribution<double> share(1e-12, 1);
  std::vector<Life> lives;
  while (lives.size() < count) {
    const double failure = law.scale * std::pow(-std::log(share(random)), 1 / law.shape);
    const double last = 2 * law.scale * share(random);
    Life life{std::min(failure, last), failure <= last, {}};
    if (share(random) < law.late_share) life.entry = .8 * law.scale * share(random);
    if (law.whole_numbers) {
      life.exit = std::ceil(life.exit);
      if (life.entry) life.entry = std::floor(*life.entry);
    }
    if (life.exit > life.entry.value_or(0)) lives.push_back(life);
  }
  return lives;
}

// Every life seen in two stretches that meet somewhere inside: nothing was learnt or lost by that.
inline std::vector<Life> split_lives(const std::vector<Life>& lives, std::mt19937_64& random) {
  std::uniform_real_distribution<double> share(.1, .9);
  std::vector<Life> split;
  for (const Life& life : lives) {
    const double from = life.entry.value_or(0);
    const double middle = from + share(random) * (life.exit - from);
    split.push_back({middle, false, life.entry});
    split.push_back({life.exit, life.failed, middle});
  }
  return split;
}

}  // namespace shoplore::testing
