// Values of options that are more than a number or a word. Pure, any thread.
// Fails with kInvalidInput whose place is the option's name.
#pragma once

#include <set>
#include <string>
#include <string_view>

#include "indexer/quantities.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

// "100000..150000": from the first to below the second; either may be left out, not both.
[[nodiscard]] Result<Band<Kilometres>> parse_mileage_band(std::string_view text);

// "2014..2016": both years included; either may be left out, not both; "2016" is that year.
[[nodiscard]] Result<Band<int>> parse_year_band(std::string_view text);

// "seen,measured".
[[nodiscard]] Result<std::set<Proof>> parse_proofs(std::string_view text);

// A day, for the option of that name.
[[nodiscard]] Result<Date> parse_day(std::string_view text, std::string_view option);

}  // namespace shoplore
