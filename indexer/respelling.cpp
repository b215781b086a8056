#include "indexer/respelling.hpp"

#include <string_view>

#include "indexer/english_words.hpp"
#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShortestRespelt = 5;

// Whether one insertion, deletion, replacement or swap of neighbours turns a into b.
bool is_one_edit(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1) return false;
  std::size_t i = 0;
  while (i < a.size() && a[i] == b[i]) ++i;
  if (a.size() < b.size()) return a.substr(i) == b.substr(i + 1);
  if (i == a.size()) return false;
  if (a.substr(i + 1) == b.substr(i + 1)) return true;
  return i + 1 < a.size() && a[i] == b[i + 1] && a[i + 1] == b[i] &&
         a.substr(i + 2) == b.substr(i + 2);
}

}  // namespace

void Respelling::add_word(const std::string& word) {
  if (word.size() < kShortestRespelt || !known_words_.insert(word).second) return;
  words_[{word[0], word.size()}].insert(word);
}

std::string Respelling::respelt(const std::string& word) const {
  const bool has_digit = word.find_first_of("0123456789") != word.npos;
  if (word.size() < kShortestRespelt || has_digit || is_negation(word) || is_english_word(word) ||
      is_ordinary(word) || is_stop_word(word) || known_stems_.contains(comparable(word))) {
    return word;
  }
  // A word of the trade before an ordinary one: "whisle" is "whistle" rather than "while".
  std::string found;
  for (std::size_t size = word.size() - 1; size <= word.size() + 1; ++size) {
    const auto near = words_.find({word[0], size});
    if (near == words_.end()) continue;
    for (const std::string& known : near->second) {
      if (!is_one_edit(word, known)) continue;
      const bool is_first = found.empty() || (is_ordinary(found) && !is_ordinary(known));
      // Two candidates with one stem are one word; with two stems nobody can tell.
      if (!is_first && is_ordinary(known) == is_ordinary(found) && stem(found) != stem(known)) {
        return word;
      }
      if (is_first || !is_ordinary(known)) found = known;
    }
  }
  return found.empty() ? word : found;
}

}  // namespace shoplore
