// A binary search over the text itself: nothing to load.
#include "indexer/english_words.hpp"

namespace shoplore {

bool is_english_word(std::string_view word) {
  static const std::string_view list = english_word_files().front().second;
  std::size_t low = 0, high = list.size();
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    const std::size_t before = list.rfind('\n', middle == 0 ? 0 : middle - 1);
    const std::size_t begin = before == list.npos || middle == 0 ? 0 : before + 1;
    const std::size_t end = list.find('\n', begin);
    const std::string_view here = list.substr(begin, end - begin);
    if (here == word) return true;
    if (here < word) {
      low = end + 1;
    } else {
      high = begin;
    }
  }
  return false;
}

}  // namespace shoplore
