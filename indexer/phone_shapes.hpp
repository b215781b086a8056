// Phone numbers by their shape: groups of digits with spaces, hyphens, points, slashes or
// brackets between.
//
// | begins                                      | digits    | groups                        |
// |---------------------------------------------|-----------|-------------------------------|
// | +                                           | 7 or more | any; "(0)" may be one         |
// | 0 and a further digit, perhaps in a bracket | 7 or more | of two or more digits         |
// | anything, after "tel", "mobile", "call" ... | 6 or more | of two or more digits         |
// | 555-012-3456, (555) 012-3456                | 10        | of 3, 3 and 4                 |
//
// Not taken: dates, decimals, the number that a unit follows, and what follows "part no",
// "serial", "order" and the like. A part number that begins with 0 and has no such word before it
// is taken for a phone number; a phone number without its leading 0 and without a word before it
// goes unseen.
// Pure functions, any thread.
#pragma once

#include <vector>

#include "indexer/folded_text.hpp"

namespace shoplore {

// In order, apart from each other. Requires: runs = runs_of(text).
[[nodiscard]] std::vector<GlyphRange> find_phone_numbers(const FoldedText& text,
                                                         const std::vector<Run>& runs);

}  // namespace shoplore
