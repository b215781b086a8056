// How many letters apart two words are: insertions, deletions, replacements and swaps of
// neighbours, no part edited twice (optimal string alignment; F. J. Damerau, "A technique for
// computer detection and correction of spelling errors", CACM 7(3), 1964).
//
// Compares bytes, so a letter beyond ASCII counts as the bytes it is made of.
// Pure function, any thread.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace shoplore {

// Longest word compared, in bytes.
inline constexpr std::size_t kMaxComparedBytes = 64;

// The number of edits between the two, when it is at most `most` and both are at most
// kMaxComparedBytes long; else nothing.
[[nodiscard]] std::optional<std::size_t> edits_between(std::string_view a, std::string_view b,
                                                       std::size_t most);

}  // namespace shoplore
