// Reads mileage and model years out of a note, where they stand.
//
// In digits or in words (spelled_numbers.hpp). Looks at the words directly around a number and no
// further; does not know of negation.
// Pure functions, any thread. Spans are bytes of the text, half-open.
#pragma once

#include <string_view>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {

// "142,000 km", "142k km", "88000 miles", "mileage 142000", "180k" (default unit, said in
// reading_chosen). No mileage: anything below 1,000 or above 2,000,000; a bare k below 10,000,
// which is as likely engine speed; a speed; a distance since something ("5,000 km ago"). Of
// several the longest is taken, because a vehicle's mileage only grows, and said.
[[nodiscard]] std::vector<RecognisedItem> read_mileages(std::string_view text,
                                                        DistanceUnit default_unit);

// The first year from 1980 to next year that stands alone, or '16 (said in reading_chosen). No
// year: a date's, a reading's ("2000 rpm"), one after "at", "in", "since" and the like.
[[nodiscard]] std::vector<RecognisedItem> read_model_years(std::string_view text);

}  // namespace shoplore
