// Where a text spells fault codes, and which.
//
// | spelling                              | read as                                              |
// |---------------------------------------|------------------------------------------------------|
// | P0299, p0299, P 0299, P-0299          | one code; a letter apart from its digits is none      |
// |                                       | before a unit ("C 1200 rpm"), after a number          |
// |                                       | ("80 C 1200") or before a year ("C 2016")             |
// | P0299-16, P0299:16, P0299 FTB 16      | with a failure type; a bare "P0299 16" is without,    |
// |                                       | since 16 may as well count or measure something       |
// | PO299                                 | letter O for zero, where two digits are real ones     |
// | P0299/0234, P0299, 0234               | the later has the letter of the one before; only one  |
// |                                       | that begins with 0, so neither a year nor a count     |
// | P0171/174, P0171/4                    | the last characters anew, when that is a later code   |
// The last three kinds say how they were read.
// Does not know of negation or status (code_reader.hpp). Pure functions, any thread; linear.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault_code.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {

struct SpelledCode {
  FaultCode code;
  Span span;
  std::string reading_chosen;  // empty when it is spelt in full
};

// In text order, apart from each other. A code may not be part of a longer word.
[[nodiscard]] std::vector<SpelledCode> find_codes(std::string_view text);

// Whether the two codes stand beside each other in one list: only blanks, "," "/" "&" "+", "and"
// and "or" between them. Requires: the first ends before the second begins.
[[nodiscard]] bool are_listed(std::string_view text, Span first, Span second);

}  // namespace shoplore
