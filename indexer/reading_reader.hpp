// Reads measured values out of a note: a number with its unit ("11.2 V", "0,4 ohm", "-8 mbar"), or
// OL for an open circuit.
//
// Does not know which check took the reading (finding_reader.hpp joins them). A range ("10 to
// 12 V") is an expectation and no reading; a speed, engine speed or temperature after "at", "over"
// and the like says when something happens and is none either; nor is a distance, a duration or
// what names a thing ("12 volt battery").
// Pure functions, any thread. Spans are bytes of the text, half-open.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/recogniser.hpp"

namespace shoplore {

// Items of kind kReading; id is "11.2 V" with a point and the unit's symbol, or "OL".
[[nodiscard]] std::vector<RecognisedItem> read_readings(std::string_view text);

// The value in another unit of the same quantity (V and mV, bar and mbar, psi and kPa, ohm and
// kohm ...); nothing when the two measure different things or a unit is unknown.
// 1 psi = 6.894757 kPa (NIST SP 811, appendix B.9); 1 bar = 100 kPa (SI brochure, table 8).
[[nodiscard]] std::optional<double> in_unit(double value, std::string_view from,
                                            std::string_view to);

}  // namespace shoplore
