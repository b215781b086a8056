#include "indexer/text_scan.hpp"

#include <algorithm>

#include "indexer/text.hpp"

namespace shoplore {

std::size_t skip_spaces(std::string_view text, std::size_t i) {
  while (true) {
    const std::string_view rest = text.substr(std::min(i, text.size()));
    if (rest.starts_with(' ')) {
      ++i;
    } else if (rest.starts_with("\u00a0")) {
      i += 2;
    } else if (rest.starts_with("\u202f")) {
      i += 3;
    } else {
      return i;
    }
  }
}

std::string word_after(std::string_view text, std::size_t i) {
  const std::size_t begin = skip_spaces(text, i);
  std::size_t end = begin;
  while (is_word_char(byte_at(text, end))) ++end;
  return lower_case(text.substr(begin, end - begin));
}

std::string_view word_before(std::string_view text, std::size_t end) {
  while (end > 0 && text[end - 1] == ' ') --end;
  if (end > 0 && (text[end - 1] == ':' || text[end - 1] == '=')) --end;
  while (end > 0 && text[end - 1] == ' ') --end;
  std::size_t begin = end;
  while (begin > 0 && is_word_char(text[begin - 1])) --begin;
  return text.substr(begin, end - begin);
}

}  // namespace shoplore
