#include "indexer/other_subjects.hpp"

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

void add_stems(std::string_view text, std::unordered_set<std::string>& stems) {
  for (const Word& word : words_of(text)) stems.insert(comparable(word.text));
}

bool is_single_word(std::string_view phrase) {
  return phrase.find(' ') == std::string_view::npos;
}

}  // namespace

OtherSubjects::OtherSubjects(const Vocabulary& vocabulary) {
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kComponent)) {
    const std::vector<Word> words = words_of(entry.name);
    if (!words.empty()) nouns_.insert(comparable(words.back().text));
  }
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kSymptom)) {
    bool has_single = is_single_word(entry.name);
    for (const std::string& phrase : entry.phrases) has_single |= is_single_word(phrase);
    if (!has_single) continue;
    auto& own = own_[id];
    add_stems(entry.name, own);
    for (const std::string& phrase : entry.phrases) add_stems(phrase, own);
    for (const std::string& part : entry.components) {
      const Entry* component = vocabulary.find(EntryKind::kComponent, part);
      if (component == nullptr) continue;
      add_stems(component->name, own);
      for (const std::string& phrase : component->phrases) add_stems(phrase, own);
    }
  }
}

bool OtherSubjects::is_of_another(const NotePage& page, const PhraseMatch& match) const {
  // "lock motor no power": the plug, not the engine.
  const bool is_lack = match.last - match.first == 2 && is_negation(page.word(match.first));
  const bool is_one_word = match.last - match.first == 1;
  if (match.kind != EntryKind::kSymptom || !(is_one_word || is_lack)) return false;
  const auto own = own_.find(match.id);
  if (own == own_.end()) return false;
  std::size_t i = match.first;
  while (i > 0 && page.same_clause(i - 1, match.first) &&
         (is_stop_word(page.word(i - 1)) || is_filler(page.word(i - 1)))) {
    --i;
  }
  if (i == 0 || !page.same_clause(i - 1, match.first)) return false;
  const std::string& subject = page.token(i - 1).stem;
  return nouns_.contains(subject) && !own->second.contains(subject);
}

}  // namespace shoplore
