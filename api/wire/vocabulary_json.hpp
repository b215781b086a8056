// Vocabulary entries as JSON.
//
//   entry: {"kind":"check","id":"wastegate_linkage_by_hand","name":"move the wastegate linkage by
//           hand","phrases":[".."],"minutes":5,"removals":["heat_shield"],..}
//   Kind, id, name and phrases are always there, every other field of vocabulary.hpp where the
//   entry has it.
//   page: {"entries":[entry],"matches":57,"next_cursor":""}; next_cursor is "" on the last page.
// Pure functions, any thread. One line, no trailing newline.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "indexer/vocabulary.hpp"

namespace shoplore {

[[nodiscard]] std::string entry_json(const Entry& entry);

// `matches`: how many there are on all pages together.
[[nodiscard]] std::string vocabulary_page_json(std::span<const Entry* const> page,
                                               std::size_t matches, std::string_view next_cursor);

}  // namespace shoplore
