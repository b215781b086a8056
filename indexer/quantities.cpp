#include "indexer/quantities.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <optional>

namespace shoplore {
namespace {

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

}  // namespace

Kilometres kilometres_from_miles(double miles) {
  return Kilometres{std::llround(miles * kKilometresPerMile)};
}

Result<Date> parse_date(std::string_view text) {
  const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
  const auto year = shaped ? digits(text.substr(0, 4)) : std::nullopt;
  const auto month = shaped ? digits(text.substr(5, 2)) : std::nullopt;
  const auto day = shaped ? digits(text.substr(8, 2)) : std::nullopt;
  if (!year || !month || !day) {
    return fail(ErrorCode::kInvalidInput, "", "expected a date as YYYY-MM-DD");
  }
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok() || *year < 1900 || *year > 2199) {
    return fail(ErrorCode::kInvalidInput, "",
                fmt::format("there is no day {} in the years 1900 to 2199", text));
  }
  return Date{std::chrono::sys_days{date}};
}

std::string format_date(Date date) {
  const std::chrono::year_month_day parts{date.days};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(parts.year()),
                     static_cast<unsigned>(parts.month()), static_cast<unsigned>(parts.day()));
}

std::string thousands(std::int64_t number) {
  std::string digits = fmt::format("{}", number);
  const std::size_t first = number < 0 ? 1 : 0;
  for (std::size_t at = digits.size(); at > first + 3;) {
    at -= 3;
    digits.insert(at, 1, ',');
  }
  return digits;
}

Date today() {
  return Date{std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now())};
}

}  // namespace shoplore
