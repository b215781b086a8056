// Where a text mentions an identity: VINs, plates, phone numbers, e-mail addresses, and the very
// customer, plate and VIN that the counter knows of.
//
// Finds by shape, so it knows its limits: a plate of no listed shape, a name nobody gave, a
// street or a phone number written in words goes unseen unless given. What was given is found in
// any case, accent, spacing and hyphenation. The bytes of a control unit's reply (scan_bytes.hpp)
// are nobody's phone number, plate or VIN, unless given. Pure functions, any thread, any text
// (malformed UTF-8 included). Linear in the text, times the number of words in the customer's name.
//
// | what      | shape                                                                          |
// |-----------|--------------------------------------------------------------------------------|
// | VIN       | a run of 17 or more letters and digits, at least 4 of them digits              |
// | e-mail    | local@domain.tld                                                               |
// | phone     | phone_shapes.hpp                                                               |
// | plate     | plate_shapes.hpp                                                               |
#pragma once

#include <compare>
#include <cstddef>
#include <string_view>
#include <vector>

#include "indexer/case_json.hpp"
#include "indexer/plate_shapes.hpp"
#include "indexer/words_to_keep.hpp"

namespace shoplore {

// Half-open byte range.
struct Mention {
  std::size_t begin = 0, end = 0;
  friend auto operator<=>(const Mention&, const Mention&) = default;
};

// In order, apart from each other. Identity fields may be empty.
[[nodiscard]] std::vector<Mention> find_mentions(std::string_view text, const Identity& identity,
                                                 const WordsToKeep& keep,
                                                 TextKind kind = TextKind::kProse);

}  // namespace shoplore
