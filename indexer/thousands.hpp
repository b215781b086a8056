// Whole numbers for people, with their thousands apart: "142,000".
//
// A pure function, any thread; it cannot fail.
#pragma once

#include <cstdint>
#include <string>

namespace shoplore {

// "2,400", "-1,234,567".
[[nodiscard]] std::string thousands(std::int64_t number);

}  // namespace shoplore
