// Small distinct types for numbers that must not be mixed, and dates.
#pragma once

#include <chrono>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/result.hpp"

namespace shoplore {

// Row of a case in records.db. Also its document id in the index and its bit in the ledger:
// one number on purpose, at least 1, never reused.
struct CaseId {
  std::uint32_t value = 0;
  friend auto operator<=>(const CaseId&, const CaseId&) = default;
};

// Position in the append-only change table; 0 means "nothing recorded yet".
struct Revision {
  std::int64_t value = 0;
  friend auto operator<=>(const Revision&, const Revision&) = default;
};

// Whole kilometres on an odometer or between two readings.
struct Kilometres {
  std::int64_t value = 0;
  friend auto operator<=>(const Kilometres&, const Kilometres&) = default;
};

// One international mile is 1.609344 km exactly: 1,760 yards of 0.9144 m (NBS Circular 572
// addendum, in force since 1 July 1959). The US survey mile is not used on odometers.
inline constexpr double kKilometresPerMile = 1.609344;

// Nearest whole kilometre of a reading in miles.
[[nodiscard]] Kilometres kilometres_from_miles(double miles);

// Working time; the unit of checks, removals and repairs.
struct Minutes {
  double value = 0;
  friend auto operator<=>(const Minutes&, const Minutes&) = default;
};

// A calendar day, proleptic Gregorian, without a time zone: the workshop's own day.
struct Date {
  std::chrono::sys_days days{};
  friend auto operator<=>(const Date&, const Date&) = default;
};

// Reads "2026-02-28" (ISO 8601, four-digit years 1900 to 2199). Fails with kInvalidInput on any
// other form and on days that do not exist, such as 2026-02-30.
[[nodiscard]] Result<Date> parse_date(std::string_view text);

// "2026-02-28".
[[nodiscard]] std::string format_date(Date date);

// "2,400": thousands apart.
[[nodiscard]] std::string thousands(std::int64_t number);

// Today by this machine's clock, in UTC.
[[nodiscard]] Date today();

}  // namespace shoplore
