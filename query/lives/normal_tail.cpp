// Below kFar by erfc; beyond it by Laplace's continued fraction for the hazard,
//   f / Q = z + 1 / (z + 2 / (z + 3 / (z + ...)))
// (Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2.14), from its tail inwards, which
// also gives hazard - z without taking a difference.
#include "query/lives/normal_tail.hpp"

#include <cmath>
#include <numbers>

namespace shoplore {
namespace {

constexpr double kFar = 6;
constexpr int kTerms = 24;  // at z = 6 the 20th changes the last digit at most
const double kLogRootTwoPi = std::log(2 * std::numbers::pi) / 2;

}  // namespace

NormalTail normal_tail(double z) {
  const double log_density = -z * z / 2 - kLogRootTwoPi;
  if (z < kFar) {
    // Near 1 the logarithm is taken of the other tail: Q itself has no digits left to lose.
    const double share = std::erfc(z / std::numbers::sqrt2) / 2;
    const double log_share =
        z < 0 ? std::log1p(-std::erfc(-z / std::numbers::sqrt2) / 2) : std::log(share);
    const double hazard = std::exp(log_density) / share;
    return {log_share, hazard, hazard * (hazard - z)};
  }
  double rest = z;
  for (int term = kTerms; term >= 2; --term) rest = z + term / rest;
  const double over = 1 / rest;  // hazard - z
  const double hazard = z + over;
  return {log_density - std::log(hazard), hazard, hazard * over};
}

}  // namespace shoplore
