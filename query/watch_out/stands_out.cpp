#include "query/watch_out/stands_out.hpp"

#include <numeric>

#include "query/fix_counts.hpp"

namespace shoplore {

bool stands_out(std::uint32_t count, std::uint32_t out_of, double others_rate) {
  if (out_of < kEnoughToWarn || count < kFewestWarned) return false;
  // The interval holds the share itself: without this there is no need to work it out.
  if (count <= others_rate * out_of) return false;
  return share_of(count, out_of).interval.low > others_rate;
}

std::uint32_t total(const std::vector<std::uint32_t>& by_cause) {
  return std::accumulate(by_cause.begin(), by_cause.end(), std::uint32_t{0});
}

}  // namespace shoplore
