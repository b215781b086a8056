// Which of many tests on counts are tests at all: one that could not stand out however its cases
// had fallen is no look at the data, and must not cost the others anything.
//
// Told by the smallest p each could give with its total (Tarone, Biometrics 46, 1990; for false
// discovery rates Gilbert, Appl. Statist. 54, 2005): the smallest k such that no more than k tests
// could reach level / k; those are the tests.
// Pure function, any thread; it cannot fail.
#pragma once

#include <span>
#include <vector>

namespace shoplore {

// In the order of `smallest_p`. Requires: each above 0 and at most 1; level above 0.
[[nodiscard]] std::vector<bool> could_stand_out(std::span<const double> smallest_p, double level);

}  // namespace shoplore
