// What the marks between two words of a note say: that a clause ends, or that they stand for a
// word.
//
// Does not know the vocabulary (phrase_matcher.hpp). Pure functions, any thread. Requires of every
// function: both are words of the text, the first before the other.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "indexer/text.hpp"

namespace shoplore {

// Whether the text between two words parts them: a mark of punctuation, but neither the point of
// a number ("12.6") nor of a shortened word before its number ("cyl. 3").
[[nodiscard]] bool ends_clause(std::string_view text, const Word& before, const Word& after);

// Whether the words are written without a space between them: "w/o", not "w o".
[[nodiscard]] bool written_together(std::string_view text, const Word& first, const Word& last);

// A sign that stands for a word.
struct SignWord {
  std::string word;    // "and", "or", "at"
  std::size_t at = 0;  // byte in the text
};

// "coil & plugs", "misfire/whistle", "lumpy @ idle": the sign as the word that it stands for. A
// slash only between whole words: "a/c" is one.
[[nodiscard]] std::optional<SignWord> sign_between(std::string_view text, const Word& before,
                                                   const Word& after);

}  // namespace shoplore
