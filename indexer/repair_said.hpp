// Reads out of the words around a repair who did it and how long ago.
//
// "fitted elsewhere 3 mo ago", "he put it in himself", "not by us", "last month". Does not know
// what was done (repair_reader.hpp). The subject of a sentence counts only right before the work:
// "customer changed", not "customer says ... changed"; "had it changed" is somebody else's work.
// Pure functions, any thread. Requires of every function: is_work has one mark for each token of
// the page, set where a word of work done stands.
#pragma once

#include <optional>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

struct RepairSaid {
  std::optional<RepairedBy> by;
  std::optional<int> months_ago;
};

// Who did it, from these tokens.
[[nodiscard]] std::optional<RepairedBy> repaired_by(const NotePage& page,
                                                    const std::vector<char>& is_work,
                                                    TokenRange words);

// How long ago, in whole months rounded down, from the first of these tokens that begins such
// words ("4 mo ago", "2mo back", "three months old", "last year"), which may end past the range.
[[nodiscard]] std::optional<int> months_ago_in(const NotePage& page, TokenRange words);

// A word of time or person, or the number before one ("four months", "5,000 km").
[[nodiscard]] bool tells_repair(const NotePage& page, std::size_t at);

// A word that may stand between a part and its work: one of time or person, a stop word, a number
// or which one it was.
[[nodiscard]] bool passes_in_repair(const NotePage& page, std::size_t at);

// A word that says alone who did it or how long ago: "us", "dealer", "ago", "2mo".
[[nodiscard]] bool says_who_or_when(const NotePage& page, std::size_t at);

// Whether the word before this token, adverbs apart, names somebody who could have done it.
[[nodiscard]] bool has_somebody_before(const NotePage& page, std::size_t at);

}  // namespace shoplore
