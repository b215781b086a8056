// A plot for a terminal: a grid of characters with its axes.
//
// Bands are dots, the first series '#', the next 'o', 'x', '+'; where two meet the first stands.
// What falls between two characters is drawn at the nearer. Signs are told in a line beneath.
// Pure function, any thread; it cannot fail. Requires: a width of kMinWidth or more.
#pragma once

#include <string>

#include "api/cli/text_layout.hpp"
#include "api/wire/plot.hpp"

namespace shoplore {

// Without the title and the note; newline at the end of each line. An empty plot is "".
[[nodiscard]] std::string text_of(const Plot& plot, std::size_t width);

}  // namespace shoplore
