// A note as a page of tokens of which nobody has read anything yet, for tests of single readers.
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

#include "indexer/note_page.hpp"
#include "indexer/repair_deeds.hpp"
#include "tests/indexer/note_lines.hpp"

namespace shoplore {

inline const PhraseMatcher& built_in_matcher() {
  static const PhraseMatcher made(built_in_vocabulary());
  return made;
}

// Requires: the text outlives the page.
inline NotePage page_of(std::string_view text) {
  static const CarriedPhrases carried(built_in_vocabulary(), built_in_matcher());
  return {built_in_matcher(), carried, text, {}};
}

inline std::vector<Deed> deeds_on(const NotePage& page) {
  return deeds_of(page, built_in_vocabulary(), page.matches({EntryKind::kComponent}));
}

inline std::vector<char> work_on(const NotePage& page) {
  std::vector<char> is_work(page.size(), 0);
  for (const Deed& deed : deeds_on(page)) {
    for (std::size_t i = deed.at.first; i < deed.at.last; ++i) is_work[i] = 1;
  }
  return is_work;
}

// The first token of this word; the size of the page when it has none.
inline std::size_t token_of(const NotePage& page, std::string_view word) {
  std::size_t i = 0;
  while (i < page.size() && page.word(i) != word) ++i;
  return i;
}

}  // namespace shoplore
