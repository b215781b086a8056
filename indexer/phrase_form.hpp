// The form in which phrases of the vocabulary and words of a note are compared: written out,
// stemmed, and without the words that carry nothing.
//
// "doesn't start", "is not starting" and "did not start" are one phrase: contractions are written
// out, stop words dropped while two words remain, each word stemmed, and a few words of the trade
// that mean the same put as one ("light" as "lamp").
// Knows neither shorthand nor spelling (phrase_matcher.hpp). Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace shoplore {

// The words a contraction stands for, with or without its apostrophe: "doesn't" is "does not",
// "cannot" is "can not"; any other word is itself.
[[nodiscard]] std::vector<std::string> written_out(const std::string& word);

// The stem by which a lower-case word is compared.
[[nodiscard]] std::string comparable(const std::string& word);

// Whether a word may be missing from a phrase, or stand between two of its words: a stop word,
// but neither "all", "after" nor one that joins ("and", "or", "but").
[[nodiscard]] bool says_nothing(std::string_view word);

// The phrase's words in the form above; all of them when fewer than two would remain.
[[nodiscard]] std::vector<std::string> phrase_form(const std::vector<std::string>& words);

}  // namespace shoplore
