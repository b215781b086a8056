// Reads how often something happens out of a note: "now and then", "every time", "not always".
//
// Does not know of what; finding_reader.hpp gives it to the nearest symptom.
// Pure function, any thread.
#pragma once

#include <optional>
#include <string_view>

#include "indexer/case_record.hpp"
#include "indexer/note_page.hpp"

namespace shoplore {

struct HowOftenWords {
  HowOften how_often = HowOften::kSometimes;
  std::size_t end = 0;  // the token after the last
};

// The longest such phrase that begins at this token, of tokens nobody claimed.
[[nodiscard]] std::optional<HowOftenWords> how_often_at(const NotePage& page, std::size_t at);

// What one word says of how often, or "every" and the word after it: "sometimes", "always", "every
// morning"; nothing of other words.
[[nodiscard]] std::optional<HowOften> how_often_of(std::string_view word, std::string_view next);

}  // namespace shoplore
