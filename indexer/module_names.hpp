// Names of control units as notes and scan reports write them, of no maker in particular.
//
// | form                                              | example                                |
// |---------------------------------------------------|----------------------------------------|
// | a known short name, perhaps with "module"         | "ECM", "abs", "BCM 2", "ABS module"    |
// | what it controls and a word for the unit          | "Engine control unit", "airbag module" |
// | what it controls alone ("plain")                  | "Engine", "Instrument cluster"         |
// A plain name is a module's only where the place says so (a heading, brackets, a colon).
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/recogniser.hpp"
#include "indexer/text.hpp"

namespace shoplore {

struct ModuleName {
  std::size_t words = 0;  // how many it takes
  bool plain = false;
};

// The longest name that begins at this word; empty when none does.
[[nodiscard]] std::optional<ModuleName> module_at(const std::vector<Word>& words, std::size_t at);

// The longest name that ends right before byte `end` on its line, blanks and ":", "-", "=" and
// brackets apart. A plain one needs such a mark, any other may also follow the start of its clause
// or a stop word ("from the ECM P0299"), but no other word ("new ecu P0299").
[[nodiscard]] std::optional<Span> module_before(std::string_view text, std::size_t end);

// What stands right before the byte: "P0741 stored" says more surely than "P0741" alone that a
// module comes next.
enum class Follows { kCode, kStatus };

// The name after byte `begin` in brackets, after "in", "from", "on" or "by", or after the word
// "module" ("P0299 (ECM)", "P0299 in the engine control unit", "P0AA6, module BMS"); after a status
// also a plain name so led to and a bare short name, where nothing follows it ("stored in gateway",
// "stored TCM."). Its span holds brackets and these words.
struct ModuleAfter {
  Span span, name;
};
[[nodiscard]] std::optional<ModuleAfter> module_after(std::string_view text, std::size_t begin,
                                                      Follows what = Follows::kCode);

// The name as records hold it: a short one in capitals and without a word for the unit ("abs
// module" is ABS, "BCM 2" is itself); any other as written.
[[nodiscard]] std::string module_called(std::string_view name);

}  // namespace shoplore
