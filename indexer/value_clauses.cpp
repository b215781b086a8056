#include "indexer/value_clauses.hpp"

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {

bool leads_on(const NotePage& page, std::size_t before, std::size_t after) {
  const std::string_view between = page.between(before, after);
  return between.find_first_of(";.!\n/") == between.npos;
}

bool goes_with_values(std::string_view word) {
  return is_stop_word(word) || says_position(word) || small_number(word) || word == "cyl" ||
         word == "cylinder" || word == "no" || word == "number" || word == "and";
}

std::size_t end_of_values(const NotePage& page, const std::vector<char>& is_finding,
                          const std::vector<char>& is_reading, std::size_t first) {
  bool holds_reading = false;
  std::size_t end = first;
  for (; page.same_clause(end, first); ++end) {
    const bool fits = is_reading[end] != 0 || goes_with_values(page.word(end));
    if (is_finding[end] != 0 || !fits) return first;
    holds_reading = holds_reading || is_reading[end] != 0;
  }
  return holds_reading ? end : first;
}

}  // namespace shoplore
