// A filter as text: what counting was restricted to. Pure, any thread.
#pragma once

#include <string>

#include "query/case_counter.hpp"

namespace shoplore {

// "make Brackwater, 100,000 to below 150,000 km, model years 2014 to 2016, closed since
// 2024-01-01, cause seen or measured"; empty for an empty filter.
[[nodiscard]] std::string filter_text(const Filter& filter);

}  // namespace shoplore
