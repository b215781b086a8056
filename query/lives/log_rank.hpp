// Do two groups of parts fail at the same rate at every age? The log-rank test (Mantel 1966; Peto
// & Peto 1972) with the hypergeometric variance, so that ties are counted right.
//
// It finds one group failing earlier throughout; two curves that cross can cancel. It says nothing
// about how large the difference is: for that compare the curves (kaplan_meier).
//
// Plain data and pure function, any thread. Errors: check_lives (lives.hpp), the place starting
// with "first" or "second"; kInvalidInput when no failure tells the groups apart: none happened
// while both were at risk, or all at risk failed at once.
#pragma once

#include <cstdint>
#include <span>

#include "indexer/result.hpp"
#include "query/lives/lives.hpp"

namespace shoplore {

struct LogRank {
  std::uint64_t first_failed = 0, second_failed = 0;
  double first_expected = 0, second_expected = 0;  // were both alike; same sum as the failed
  double chi_squared = 0;                          // 1 degree of freedom
  double p = 1;                                    // of at least this, were both alike
};

[[nodiscard]] Result<LogRank> log_rank(std::span<const Life> first, std::span<const Life> second);

}  // namespace shoplore
