// Reads fault codes, mileage and model years out of a note, where they stand.
//
// Pure functions, any thread. Spans are bytes of the text, half-open.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {

// "P0299", "p 0299", "P0299-00", "P0299:16": letter, first digit 0 to 3, three hex digits, and an
// optional failure type. A code may not be part of a longer word.
[[nodiscard]] std::vector<RecognisedItem> read_codes(std::string_view text);

// "142,000 km", "142k km", "88000 miles", "180k" (in the default unit, said in reading_chosen).
// A bare number without unit and k is no mileage.
[[nodiscard]] std::vector<RecognisedItem> read_mileages(std::string_view text,
                                                        DistanceUnit default_unit);

// A four-digit year from 1980 to next year that stands alone, or '16 (said in reading_chosen).
[[nodiscard]] std::vector<RecognisedItem> read_model_years(std::string_view text);

}  // namespace shoplore
