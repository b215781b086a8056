// A plot as an SVG picture: for printing on paper in black and white as much as for a screen.
//
// Well-formed XML (SVG 1.1), 720 by 440 units, scalable. Black on white; series are told apart by
// dashes, bands by hatching, never by colour alone. No script, no style sheet, no font file, no
// link: nothing in it loads or runs. `title` and a description say in words what it shows.
// An empty plot becomes a picture of its title and note.
// Pure function, any thread; it cannot fail. Requires: texts are valid UTF-8; control characters
// are left out.
#pragma once

#include <span>
#include <string>

#include "api/wire/plot.hpp"

namespace shoplore {

inline constexpr const char* kSvgType = "image/svg+xml";

[[nodiscard]] std::string svg_of(const Plot& plot);

// Several, one beneath the other. Requires: at least one.
[[nodiscard]] std::string svg_of(std::span<const Plot> plots);

}  // namespace shoplore
