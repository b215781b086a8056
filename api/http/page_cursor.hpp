// Cursors: where a list goes on, in a form that belongs to one question and to nobody's guessing.
//
// "<position>-<16 hex digits of the question>". A cursor of another question (another filter,
// another path) is refused; the limit may change from page to page.
// Pure functions, any thread.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/result.hpp"

namespace shoplore {

[[nodiscard]] std::string page_cursor(std::int64_t position, std::string_view question);

// The position, at least 1; 0 for no cursor. kInvalidInput at ?cursor.
[[nodiscard]] Result<std::int64_t> cursor_position(std::string_view cursor,
                                                   std::string_view question);

}  // namespace shoplore
