// The words beside a number that make it the vehicle's mileage, or another distance.
//
// "odometer reads 131204", "98,500 on the clock" are mileages without a unit; "range 1800 km",
// "a litre in 1000 km", "2400 km to go" are none with one. Does not read the number
// (number_readers.hpp).
// Pure functions, any thread; a few words beside the number are looked at.
#pragma once

#include <cstddef>
#include <string_view>

namespace shoplore {

// A number in [begin, end) of the text, its unit included, and what it comes to.
struct Distance {
  std::string_view text;
  std::size_t begin = 0, end = 0;
  double value = 0;
};

// Where the words begin that lead to a mileage ("mileage approx.", "odo reads"), or begin.
[[nodiscard]] std::size_t mileage_label_begin(const Distance& distance);

// Where "on the clock", "on it", "up" end behind the number, or end.
[[nodiscard]] std::size_t mileage_tail_end(const Distance& distance);

// "every 10,000 km", "5,000 km ago", "100 km/h": not how far the vehicle has gone.
[[nodiscard]] bool is_other_distance(const Distance& distance);

// "47k resistor", "12k cycles", "a gap of 40 thou": without a unit, a number of something else.
[[nodiscard]] bool counts_other_things(const Distance& distance);

}  // namespace shoplore
