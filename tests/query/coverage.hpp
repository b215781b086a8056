// How many of the intervals a test looked at cover the truth, and how many have to.
#pragma once

#include <cmath>

#include "query/share.hpp"

namespace shoplore::testing {

// Of n intervals that cover .87 of the time (what Jeffreys at .90 does at its worst here), so many
// at least but for one time in a thousand.
inline double fewest_covered(int intervals) {
  const double n = intervals;
  return .87 * n - 3.1 * std::sqrt(.87 * .13 * n);
}

struct Coverage {
  int reported = 0, covered = 0;
  void add(const Share& share, double truth) {
    ++reported;
    covered += covers(share, truth) ? 1 : 0;
  }
  static bool covers(const Share& share, double truth) {
    return share.interval.low <= truth && truth <= share.interval.high;
  }
};

}  // namespace shoplore::testing
