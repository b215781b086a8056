// Clauses of a list that hold nothing but readings: "0.5 ohm, 0.6 ohm, OL: bad", "24 bar, cyl 2 23
// bar: good".
//
// The check before such a list goes on behind it. Does not judge readings (check_reader.hpp) nor
// words (verdict_words.hpp). Pure functions, any thread. Requires of every function: marks are of
// the page's tokens.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

// "fuel filter looked at, clean", "t/box play? can't tell": whether what stands at `after` can
// still be of what stands at `before`; no full stop, semicolon, stroke or line end is between.
[[nodiscard]] bool leads_on(const NotePage& page, std::size_t before, std::size_t after);

// "cyl", "2", "rear", "and": which of several things a value in a row is of.
[[nodiscard]] bool goes_with_values(std::string_view word);

// The token after the clause that begins at `first` when it holds readings and otherwise only
// words that go with them; `first` when it holds none or anything else.
[[nodiscard]] std::size_t end_of_values(const NotePage& page, const std::vector<char>& is_finding,
                                        const std::vector<char>& is_reading, std::size_t first);

}  // namespace shoplore
