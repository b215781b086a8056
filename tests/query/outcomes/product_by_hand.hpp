// The product-limit share by its definition: day by day, those that failed of those watched.
#pragma once

#include <span>

#include "query/outcomes/fix_lives.hpp"

namespace shoplore::testing {

inline double share_by_hand(std::span<const FixLife> lives, std::chrono::days until) {
  double share = 1;
  for (std::chrono::days on{0}; on <= until; ++on) {
    double watched = 0, failed = 0;
    for (const FixLife& each : lives) {
      if (!each.days || *each.days < on) continue;
      watched += 1;
      if (*each.days == on && each.end == FixEnd::kCameBack) failed += 1;
    }
    if (failed > 0) share *= 1 - failed / watched;
  }
  return share;
}

}  // namespace shoplore::testing
