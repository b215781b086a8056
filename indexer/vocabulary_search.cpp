#include "indexer/vocabulary_search.hpp"

#include <algorithm>
#include <string>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

struct Wanted {
  std::string word, stem;
};

// Ids are cut at their underscores. A stem's final i may stand for a y ("carries", "carry").
std::vector<Wanted> wanted_words(std::string_view text) {
  std::string spaced(text);
  std::replace(spaced.begin(), spaced.end(), '_', ' ');
  std::vector<Wanted> wanted;
  for (Word& word : words_of(spaced)) {
    std::string stemmed = stem(word.text);
    if (stemmed.size() > 2 && stemmed.back() == 'i') stemmed.pop_back();
    wanted.push_back({std::move(word.text), std::move(stemmed)});
  }
  return wanted;
}

// Only what is looked for is stemmed: stemming the whole vocabulary would take most of the time.
bool has_all(const Entry& entry, const std::vector<Wanted>& wanted) {
  std::string text = entry.id;
  std::replace(text.begin(), text.end(), '_', ' ');
  text += " " + entry.name + " " + entry.expands_to;
  for (const std::string& phrase : entry.phrases) text += " " + phrase;
  const std::vector<Word> words = words_of(text);
  return std::all_of(wanted.begin(), wanted.end(), [&](const Wanted& each) {
    return std::any_of(words.begin(), words.end(), [&](const Word& has) {
      return has.text.starts_with(each.word) || has.text.starts_with(each.stem);
    });
  });
}

}  // namespace

std::vector<const Entry*> search_vocabulary(const Vocabulary& vocabulary,
                                            std::optional<EntryKind> kind, std::string_view words) {
  const std::vector<Wanted> wanted = wanted_words(words);
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
