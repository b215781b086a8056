// How likely counts like these are by chance alone: exact, from a table of log-factorials.
//
// Both one-sided, toward more; the other side is the same question with the columns exchanged. No
// two-sided p: its conventions differ, and a pattern is only ever asked for "more often".
// The hypergeometric of Boost.Math takes 4 ms at 100,000 cases; a sum from the table takes as many
// steps as there are more extreme tables worth adding.
// Lifetime: plain values. Threads: any number may ask one table.
#pragma once

#include <cstdint>
#include <vector>

#include "query/checks/diagnostic_table.hpp"

namespace shoplore {

class ExactTests {
 public:
  // For tables of at most so many cases.
  explicit ExactTests(std::uint32_t most_cases);

  // P(at least so many true positives | the margins) where test and condition have nothing to do
  // with each other: the upper tail of the hypergeometric distribution (Fisher, The Design of
  // Experiments, 1935). 1 when a margin is 0. Requires: table.cases() <= most_cases.
  [[nodiscard]] double fisher_more(const DiagnosticTable& table) const;

  // P(at least `count` of `out_of`) where each comes out so with probability `rate`: the upper
  // tail of the binomial. Requires: count <= out_of <= most_cases, 0 < rate < 1.
  [[nodiscard]] double binomial_more(std::uint32_t count, std::uint32_t out_of, double rate) const;

 private:
  [[nodiscard]] double log_choose(std::uint32_t of, std::uint32_t choose) const;
  std::vector<double> log_factorial_;
};

}  // namespace shoplore
