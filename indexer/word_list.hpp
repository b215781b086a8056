// Whether a word is one of a few fixed ones.
//
// For lists of a dozen or so that the readers of notes keep beside their rules; a list that is long
// or asked of every word wants a set. Pure, any thread, linear.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace shoplore {

template <std::size_t N>
[[nodiscard]] constexpr bool holds(const std::array<std::string_view, N>& words,
                                   std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace shoplore
