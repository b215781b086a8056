// Counted shares and ratios with their 90 % intervals for a terminal. Pure functions, any thread.
#pragma once

#include <optional>
#include <string>

#include "query/checks/diagnostic_table.hpp"

namespace shoplore {

// "21 of 72 (21-39 %)": the interval beside the count, never one without the other; "-" of none.
[[nodiscard]] std::string counted(const Share& share);

// "0.26", "8.4", "31".
[[nodiscard]] std::string factor(double value);

// "8.4 (3.1-22)"; "~" before it when 1/2 was added to each count; "-" when there is none.
[[nodiscard]] std::string factor(const std::optional<Ratio>& ratio);

}  // namespace shoplore
