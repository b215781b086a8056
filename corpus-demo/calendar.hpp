// Which day sees how many arrivals, and of what: the seasons of the patterns laid over the eight
// years of the books.
//
// A pattern's arrivals are spread over the days in proportion to its season, so over the whole
// span each keeps its true share, and a month with more failures is a busier month.
// Immutable after construction, any thread.
#pragma once

#include <array>
#include <vector>

#include "corpus-demo/world.hpp"
#include "indexer/quantities.hpp"

namespace shoplore {

// First and last day on which a case is opened, both included.
inline constexpr Date kFirstDay{std::chrono::sys_days{std::chrono::year{2018} / 11 / 1}};
inline constexpr Date kLastDay{std::chrono::sys_days{std::chrono::year{2026} / 10 / 31}};

class Calendar {
 public:
  explicit Calendar(const World& world);

  // The day by which that share of all arrivals has come. Requires: 0 <= share < 1.
  [[nodiscard]] Date day_of(double share) const;

  // Weights of the patterns among the arrivals of that day's month, comebacks left out.
  [[nodiscard]] const std::vector<double>& arrivals(Date day) const;

 private:
  std::array<std::vector<double>, 12> by_month_;
  std::vector<double> up_to_;  // arrivals up to the end of each day, of all
};

// Number of the month, 0 January to 11 December.
[[nodiscard]] std::size_t month_of(Date day);

}  // namespace shoplore
