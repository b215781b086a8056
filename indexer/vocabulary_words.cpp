#include "indexer/vocabulary_words.hpp"

namespace shoplore {

WordsToKeep vocabulary_words(const Vocabulary& vocabulary) {
  WordsToKeep keep;
  for (const auto& [kind, name] : kEnumNames<EntryKind>) {
    for (const auto& [id, entry] : vocabulary.entries(kind)) {
      keep.add(id);
      keep.add(entry.name);
      keep.add(entry.make);
      for (const std::string& family : entry.engine_families) keep.add(family);
    }
  }
  return keep;
}

}  // namespace shoplore
