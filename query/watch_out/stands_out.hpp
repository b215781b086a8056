// When a count is a warning: enough cases, and a rate credibly above what the others have.
//
// Guards against accusing by chance. A count stands out when at least kFewestWarned cases of at
// least kEnoughToWarn show it and the lower end of its 90 % interval is above the rate of all cases
// it is compared with, which are never among those counted. A chance count passes at most about one
// time in twenty, and where the others hardly ever show it (the usual case) far less often, since
// three cases have to.
// Pure functions, any thread.
#pragma once

#include <cstdint>
#include <vector>

#include "query/case_counter.hpp"
#include "query/share.hpp"

namespace shoplore {

// Cases, outcomes or verdicts counted; fewer say nothing.
inline constexpr std::uint32_t kEnoughToWarn = 5;
// Of which show what is warned of.
inline constexpr std::uint32_t kFewestWarned = 3;

// What the others show: `count` of `out_of`; 0 of 0 is taken as a rate of 0.
struct Others {
  std::uint32_t count = 0, out_of = 0;
  [[nodiscard]] double rate() const {
    return out_of == 0 ? 0 : static_cast<double>(count) / out_of;
  }
};

[[nodiscard]] bool stands_out(std::uint32_t count, std::uint32_t out_of, double others_rate);

// All of a count by cause.
[[nodiscard]] std::uint32_t total(const std::vector<std::uint32_t>& by_cause);

}  // namespace shoplore
