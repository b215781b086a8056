// The place where a continuous function of one variable is 0, when it is known to lie between two
// others: no derivative, no starting guess, nothing that could run away.
//
// Pure function, any thread; it cannot fail.
#pragma once

#include <functional>

namespace shoplore {

// To about 15 digits (Alefeld, Potra & Shi, ACM TOMS algorithm 748).
// Requires: low < high; the function has opposite signs there, or is 0 at one of them, but for
// rounding: with one sign at both the end nearer to 0 is the answer.
[[nodiscard]] double root_between(const std::function<double(double)>& function, double low,
                                  double high);

}  // namespace shoplore
