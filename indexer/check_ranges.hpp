// What a check can measure, what is expected of it, and what a reading says of it.
//
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// Whether a reading in that unit can be one of the check.
[[nodiscard]] bool can_measure(const Entry& check, std::string_view unit);

// "0.5 to 1.2 ohm", "at least 12.4 V". Requires: the check has an end of its range.
[[nodiscard]] std::string range_text(const Entry& check);

// What a reading says of a check: pass inside the expected range (ends included), fail outside or
// when a circuit that should conduct reads OL; nothing when range or unit do not tell, nor of a
// range of differences (RangeOf), unless the value is known to be one.
[[nodiscard]] std::optional<Verdict> verdict_of(const Entry& check, const Reading& reading,
                                                std::string_view unit,
                                                RangeOf measured = RangeOf::kValue);

}  // namespace shoplore
