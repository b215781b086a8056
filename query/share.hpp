// A counted share with its interval: what stands beside every "14 of 19".
//
// A plain value; fix_counts.hpp makes one with the shown interval.
#pragma once

#include <cstdint>

#include "query/intervals.hpp"

namespace shoplore {

// `count` of `out_of`, with its 90 % Jeffreys interval.
struct Share {
  std::uint32_t count = 0, out_of = 0;
  Interval interval;
};

}  // namespace shoplore
