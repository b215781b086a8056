#include "indexer/cylinder_words.hpp"

namespace shoplore {
namespace {

bool is_small_number(std::string_view word) {
  return word.size() <= 2 && word.find_first_not_of("0123456789") == word.npos;
}

bool is_number_word(std::string_view word) {
  return word == "no" || word == "number" || word == "nr";
}

bool is_cylinder(const Token& token) {
  return token.stem == "cylind" || token.text == "cyl";
}

bool is_free(const NotePage& page, std::size_t first, std::size_t last) {
  for (std::size_t i = first; i < last; ++i) {
    if (page.is_claimed(i) || !page.same_clause(i, last)) return false;
  }
  return true;
}

// End of "cylinder 3", "cylinder no 3" or "3 cylinder" that begins here; 0 when nothing does.
std::size_t cylinder_end(const NotePage& page, std::size_t at, std::size_t anchor) {
  const auto here = [&](std::size_t i) {
    return page.same_clause(i, anchor) && !page.is_claimed(i);
  };
  if (!here(at)) return 0;
  if (is_small_number(page.word(at))) {
    return here(at + 1) && is_cylinder(page.token(at + 1)) ? at + 2 : 0;
  }
  if (!is_cylinder(page.token(at))) return 0;
  std::size_t number = at + 1;
  if (here(number) && is_number_word(page.word(number))) ++number;
  return here(number) && is_small_number(page.word(number)) ? number + 1 : 0;
}

}  // namespace

TokenRange with_cylinder(const NotePage& page, TokenRange range) {
  std::size_t after = range.last;
  while (
      page.same_clause(after, range.first) &&
      (page.word(after) == "on" || page.word(after) == "in" || is_number_word(page.word(after)))) {
    ++after;
  }
  if (const std::size_t end = cylinder_end(page, after, range.first); end > 0) range.last = end;
  for (const std::size_t length : {3U, 2U}) {
    if (length > range.first) continue;
    const std::size_t begin = range.first - length;
    const bool ends_here = is_free(page, begin, range.first) &&
                           cylinder_end(page, begin + (is_number_word(page.word(begin)) ? 1 : 0),
                                        range.first) == range.first;
    if (ends_here) return {begin, range.last};
  }
  return range;
}

}  // namespace shoplore
