#include "indexer/check_ranges.hpp"

#include <fmt/format.h>

#include "indexer/reading_reader.hpp"

namespace shoplore {

std::string range_text(const Entry& check) {
  if (check.low && check.high) {
    return fmt::format("{:.6g} to {:.6g} {}", *check.low, *check.high, check.unit);
  }
  return check.low ? fmt::format("at least {:.6g} {}", *check.low, check.unit)
                   : fmt::format("at most {:.6g} {}", *check.high, check.unit);
}

bool can_measure(const Entry& check, std::string_view unit) {
  return unit.empty() ? check.unit.empty() : in_unit(1, unit, check.unit).has_value();
}

std::optional<Verdict> verdict_of(const Entry& check, const Reading& reading, std::string_view unit,
                                  RangeOf measured) {
  if (reading.word == "OL") {
    const bool conducts = in_unit(1, check.unit, "ohm") && check.high;
    return conducts ? std::optional(Verdict::kFail) : std::nullopt;
  }
  if (!reading.number || (!check.low && !check.high)) return std::nullopt;
  if (check.range_of == RangeOf::kDifference && measured == RangeOf::kValue) return std::nullopt;
  const auto value = in_unit(*reading.number, unit, check.unit);
  if (!value) return std::nullopt;
  const bool low = check.low && *value < *check.low;
  const bool high = check.high && *value > *check.high;
  return low || high ? Verdict::kFail : Verdict::kPass;
}

}  // namespace shoplore
