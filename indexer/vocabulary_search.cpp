#include "indexer/vocabulary_search.hpp"

#include <algorithm>
#include <string>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

// Every word as written and as a stem, ids cut at their underscores.
void add_words(std::string_view text, std::vector<std::string>& words) {
  std::string spaced(text);
  std::replace(spaced.begin(), spaced.end(), '_', ' ');
  for (Word& word : words_of(spaced)) {
    words.push_back(stem(word.text));
    words.push_back(std::move(word.text));
  }
}

bool has_all(const Entry& entry, const std::vector<Word>& wanted) {
  std::vector<std::string> words;
  add_words(entry.id, words);
  add_words(entry.name, words);
  add_words(entry.expands_to, words);
  for (const std::string& phrase : entry.phrases) add_words(phrase, words);
  return std::all_of(wanted.begin(), wanted.end(), [&](const Word& word) {
    const std::string stemmed = stem(word.text);
    return std::any_of(words.begin(), words.end(), [&](const std::string& has) {
      return has.starts_with(word.text) || has == stemmed;
    });
  });
}

}  // namespace

std::vector<const Entry*> search_vocabulary(const Vocabulary& vocabulary,
                                            std::optional<EntryKind> kind, std::string_view words) {
  std::string spaced(words);
  std::replace(spaced.begin(), spaced.end(), '_', ' ');
  const std::vector<Word> wanted = words_of(spaced);
  std::vector<const Entry*> found;
  for (const auto& [each_kind, unused] : kEnumNames<EntryKind>) {
    if (kind && *kind != each_kind) continue;
    for (const auto& [id, entry] : vocabulary.entries(each_kind)) {
      if (has_all(entry, wanted)) found.push_back(&entry);
    }
  }
  const std::string exactly = lower_case(words);
  std::stable_partition(found.begin(), found.end(), [&](const Entry* entry) {
    return !exactly.empty() && (lower_case(entry->id) == exactly || entry->name == exactly);
  });
  return found;
}

}  // namespace shoplore
