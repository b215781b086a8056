// The usual table, three rows of it at a time: a swap looks two rows back.
#include "indexer/edit_distance.hpp"

#include <algorithm>
#include <array>

namespace shoplore {

std::optional<std::size_t> edits_between(std::string_view a, std::string_view b, std::size_t most) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() > kMaxComparedBytes || b.size() - a.size() > most) return std::nullopt;
  using Row = std::array<std::size_t, kMaxComparedBytes + 1>;
  Row two_back{}, last{}, now{};
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = i;
    std::size_t least = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      now[j] = std::min({replaced, last[j] + 1, now[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) now[j] = std::min(now[j], two_back[j - 2] + 1);
      least = std::min(least, now[j]);
    }
    // A swap jumps over a row, so one more than `most` here may still be mended by it.
    if (least > most + 1) return std::nullopt;
    two_back = last;
    last = now;
  }
  if (last[b.size()] > most) return std::nullopt;
  return last[b.size()];
}

}  // namespace shoplore
