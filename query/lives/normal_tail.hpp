// The upper tail of the standard normal, as far out as anyone goes: where 1 - Phi(z) underflows,
// its logarithm and its hazard are still ordinary numbers.
//
// Pure function, any thread; it cannot fail. Requires: z finite.
#pragma once

namespace shoplore {

// Of Q(z) = P(Z > z) with density f.
struct NormalTail {
  double log_share = 0;     // ln Q
  double hazard = 0;        // f / Q, which is minus the slope of ln Q
  double hazard_slope = 0;  // hazard * (hazard - z), between 0 and 1
};

// To about 1e-14 relative.
[[nodiscard]] NormalTail normal_tail(double z);

}  // namespace shoplore
