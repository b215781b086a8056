// The usual table, three rows of it at a time: a swap looks two rows back.
#include "indexer/edit_distance.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace shoplore {
namespace {

using Edits = std::uint8_t;  // at most kMaxComparedBytes
using Row = std::array<Edits, kMaxComparedBytes + 1>;

// What both begin or end with costs nothing, and most words compared differ in the middle.
void trim_same_ends(std::string_view& a, std::string_view& b) {
  while (!a.empty() && !b.empty() && a.front() == b.front()) {
    a.remove_prefix(1);
    b.remove_prefix(1);
  }
  while (!a.empty() && !b.empty() && a.back() == b.back()) {
    a.remove_suffix(1);
    b.remove_suffix(1);
  }
}

}  // namespace

std::optional<std::size_t> edits_between(std::string_view a, std::string_view b, std::size_t most) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() > kMaxComparedBytes || b.size() - a.size() > most) return std::nullopt;
  trim_same_ends(a, b);
  if (a.empty()) return b.size();
  std::array<Row, 3> rows;
  Row *two_back = &rows[0], *last = &rows[1], *now = &rows[2];
  for (std::size_t j = 0; j <= b.size(); ++j) (*last)[j] = static_cast<Edits>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    (*now)[0] = static_cast<Edits>(i);
    std::size_t least = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = (*last)[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
      std::size_t edits =
          std::min({replaced, (*last)[j] + std::size_t{1}, (*now)[j - 1] + std::size_t{1}});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) edits = std::min(edits, (*two_back)[j - 2] + std::size_t{1});
      (*now)[j] = static_cast<Edits>(edits);
      least = std::min(least, edits);
    }
    // A swap jumps over a row, so one more than `most` here may still be mended by it.
    if (least > most + 1) return std::nullopt;
    Row* const free = two_back;
    two_back = last;
    last = now;
    now = free;
  }
  const std::size_t edits = (*last)[b.size()];
  return edits <= most ? std::optional(edits) : std::nullopt;
}

}  // namespace shoplore
