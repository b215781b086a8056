// How many cases were closed in each calendar month: of every cause, of every cause on every engine
// family, of every family, and in all. What `lately` compares.
//
// Whole months only: the month that has not ended by the day given is left out, so an answer is
// the same however often a month one looks. A case counts in the month in which it was closed, and
// a case without an engine family only under its cause.
// Plain values; any thread. Errors: kInvalidInput at "as of" when there are cases but all were
// closed later, naming the month of the first; the counter's.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

#include "query/case_counter.hpp"

namespace shoplore {

// Looked back at most: six years. What was true of older cases is history, not the usual.
inline constexpr std::size_t kMostMonths = 72;

struct CountSeries {
  std::string cause;          // cause key; empty: whatever the cause
  std::string engine_family;  // in lower case; empty: on any
  std::vector<std::uint32_t> by_month;
  std::uint32_t earlier = 0;  // before the first of these months
};

struct MonthlyCounts {
  std::chrono::year_month first{};   // month of by_month[0]
  std::vector<std::uint32_t> cases;  // counted cases by month
  std::vector<CountSeries> causes;   // by key
  std::vector<CountSeries> pairs;    // by key, then family
  std::vector<CountSeries> families;

  [[nodiscard]] std::size_t months() const { return cases.size(); }
  [[nodiscard]] std::chrono::year_month month(std::size_t index) const {
    return first + std::chrono::months(static_cast<int>(index));
  }
};

// From the month of the first case to the last whole month by that day; empty without any case.
[[nodiscard]] Result<MonthlyCounts> monthly_counts(const CaseCounter& counter, Date as_of);

// The last month that has ended by that day; a day that is itself the last of its month ends it.
[[nodiscard]] std::chrono::year_month last_whole_month(Date day);

// "2026-10" (ISO 8601).
[[nodiscard]] std::string month_text(std::chrono::year_month month);

}  // namespace shoplore
