#include "api/cli/option_values.hpp"

#include <charconv>
#include <optional>

namespace shoplore {

namespace {

std::optional<std::int64_t> whole_number(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

struct Ends {
  std::optional<std::int64_t> low, high;
};

// Nothing when the form is wrong or the ends are in the wrong order.
std::optional<Ends> ends_of(std::string_view text) {
  const auto dots = text.find("..");
  if (dots == std::string_view::npos) return std::nullopt;
  const auto low = text.substr(0, dots);
  const auto high = text.substr(dots + 2);
  Ends ends{whole_number(low), whole_number(high)};
  if ((!low.empty() && !ends.low) || (!high.empty() && !ends.high)) return std::nullopt;
  if (!ends.low && !ends.high) return std::nullopt;
  if (ends.low && ends.high && *ends.low > *ends.high) return std::nullopt;
  return ends;
}

std::string said(std::string_view text, std::string_view expected) {
  return "\"" + std::string(text) + "\" given, expected " + std::string(expected);
}

}  // namespace

Result<Band<Kilometres>> parse_mileage_band(std::string_view text) {
  constexpr std::string_view kExpected = "LOW..HIGH in kilometres, as in 100000..150000";
  const auto ends = ends_of(text);
  const bool empty = ends && ends->low && ends->high && *ends->low == *ends->high;
  if (!ends || empty || ends->low.value_or(0) < 0 || ends->high.value_or(0) < 0) {
    return fail(ErrorCode::kInvalidInput, "--mileage", said(text, kExpected));
  }
  Band<Kilometres> band;
  if (ends->low) band.low = Kilometres{*ends->low};
  if (ends->high) band.high = Kilometres{*ends->high};
  return band;
}

Result<Band<int>> parse_year_band(std::string_view text) {
  constexpr std::string_view kExpected = "LOW..HIGH in model years 1950 to 2100, as in 2014..2016";
  auto ends = ends_of(text);
  if (const auto one = whole_number(text)) ends = Ends{one, one};
  const auto plausible = [](const std::optional<std::int64_t>& year) {
    return !year || (*year >= 1950 && *year <= 2100);
  };
  if (!ends || !plausible(ends->low) || !plausible(ends->high)) {
    return fail(ErrorCode::kInvalidInput, "--year", said(text, kExpected));
  }
  Band<int> band;
  if (ends->low) band.low = static_cast<int>(*ends->low);
  if (ends->high) band.high = static_cast<int>(*ends->high) + 1;
  return band;
}

Result<std::set<Proof>> parse_proofs(std::string_view text) {
  std::set<Proof> proofs;
  while (true) {
    const auto comma = text.find(',');
    const auto name = text.substr(0, comma);
    const auto proof = enum_from_name<Proof>(name);
    if (!proof) {
      return fail(ErrorCode::kInvalidInput, "--proof",
                  said(name, expected_names<Proof>() + ", or several with commas between"));
    }
    proofs.insert(*proof);
    if (comma == std::string_view::npos) return proofs;
    text.remove_prefix(comma + 1);
  }
}

Result<Date> parse_day(std::string_view text, std::string_view option) {
  auto day = parse_date(text);
  if (!day) return fail(ErrorCode::kInvalidInput, std::string(option), day.error().message);
  return day;
}

}  // namespace shoplore
