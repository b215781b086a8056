// Whether a word is plain English: then it is written as it was meant, and no misspelling of a word
// of the trade ("banks" is not "bangs").
//
// About 30,000 common words of Debian's package wbritish-small (SCOWL, size 35, with permission to
// use, copy and distribute), embedded when the program is built. Says nothing of what a word means.
// Pure function, any thread.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace shoplore {

// Requires: lower case. Words with apostrophes or capitals are not in the list.
[[nodiscard]] bool is_english_word(std::string_view word);

// The embedded list: one text of words in byte order, each ending in a line end.
[[nodiscard]] const std::vector<std::pair<std::string, std::string>>& english_word_files();

}  // namespace shoplore
