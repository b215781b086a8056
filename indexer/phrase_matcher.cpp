#include "indexer/phrase_matcher.hpp"

#include <algorithm>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShortestRespelt = 5;
constexpr std::size_t kLongestShorthand = 3;

bool ends_clause(std::string_view between) {
  return between.find_first_of(",;.:!?\n") != between.npos;
}

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

std::vector<std::string> word_texts(std::string_view text) {
  std::vector<std::string> texts;
  for (const Word& word : words_of(text)) texts.push_back(word.text);
  return texts;
}

}  // namespace

PhraseMatcher::PhraseMatcher(const Vocabulary& vocabulary) {
  for (const EntryKind kind : {EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kCheck,
                               EntryKind::kWorkSign, EntryKind::kComponent, EntryKind::kAction}) {
    for (const auto& [id, entry] : vocabulary.entries(kind)) {
      if (!entry.retired.empty()) continue;
      const std::string target = vocabulary.canonical(kind, id);
      add(kind, target, entry.name);
      for (const std::string& phrase : entry.phrases) add(kind, target, phrase);
    }
  }
  for (auto& [first, phrases] : by_first_stem_) {
    std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase& a, const Phrase& b) {
      return a.stems.size() > b.stems.size();
    });
  }
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kShorthand)) {
    const auto expansion = word_texts(entry.expands_to);
    for (const std::string& phrase : entry.phrases) shorthand_[word_texts(phrase)] = expansion;
    known_words_.insert(expansion.begin(), expansion.end());
  }
}

void PhraseMatcher::add(EntryKind kind, const std::string& id, std::string_view text) {
  Phrase phrase{kind, id, {}};
  for (const std::string& word : word_texts(text)) {
    known_words_.insert(word);
    phrase.stems.push_back(stem(word));
    known_stems_.insert(phrase.stems.back());
  }
  if (!phrase.stems.empty()) by_first_stem_[phrase.stems.front()].push_back(std::move(phrase));
}

std::string PhraseMatcher::respelt(const std::string& word) const {
  const bool has_digit = word.find_first_of("0123456789") != word.npos;
  if (word.size() < kShortestRespelt || has_digit || known_stems_.contains(stem(word))) return word;
  std::string found;
  for (const std::string& known : known_words_) {
    if (known.size() < kShortestRespelt || known[0] != word[0] || !is_one_edit(word, known))
      continue;
    // Two candidates with one stem are one word; with two stems nobody can tell.
    if (!found.empty() && stem(found) != stem(known)) return word;
    found = known;
  }
  return found.empty() ? word : found;
}

std::vector<Token> PhraseMatcher::tokens_of(std::string_view text,
                                            const std::set<std::string>& keep) const {
  const std::vector<Word> words = words_of(text);
  std::vector<Token> tokens;
  std::size_t clause = 0;
  for (std::size_t i = 0; i < words.size();) {
    if (i > 0 && ends_clause(text.substr(words[i - 1].end, words[i].begin - words[i - 1].end))) {
      ++clause;
    }
    std::size_t taken = 1;
    std::vector<std::string> written{words[i].text};
    for (std::size_t n = std::min(kLongestShorthand, words.size() - i); n > 0; --n) {
      std::vector<std::string> key;
      for (std::size_t k = 0; k < n; ++k) key.push_back(words[i + k].text);
      // Shorthand of several letters is written together: "w/o", not "w o".
      const bool together = words[i + n - 1].end - words[i].begin <= 2 * n + words[i].text.size();
      const auto found = shorthand_.find(key);
      if (found == shorthand_.end() || !together) continue;
      taken = n;
      written = found->second;
      break;
    }
    for (std::string& word : written) {
      std::string spelt = keep.contains(word) ? word : respelt(word);
      std::string stemmed = stem(spelt);
      tokens.push_back(
          {std::move(spelt), std::move(stemmed), words[i].begin, words[i + taken - 1].end, clause});
    }
    i += taken;
  }
  return tokens;
}

std::optional<std::size_t> PhraseMatcher::match_at(const Phrase& phrase,
                                                   const std::vector<Token>& tokens,
                                                   const std::vector<char>& claimed,
                                                   std::size_t at) const {
  std::size_t next = at;
  for (std::size_t k = 0; k < phrase.stems.size(); ++k) {
    const auto fits = [&](std::size_t i) {
      return i < tokens.size() && claimed[i] == 0 && tokens[i].clause == tokens[at].clause &&
             tokens[i].stem == phrase.stems[k];
    };
    if (!fits(next) && k > 0 && next < tokens.size() && is_stop_word(tokens[next].text)) ++next;
    if (!fits(next)) return std::nullopt;
    ++next;
  }
  return next;
}

std::vector<PhraseMatch> PhraseMatcher::matches(const std::vector<Token>& tokens,
                                                const std::vector<char>& claimed,
                                                const std::set<EntryKind>& kinds) const {
  std::vector<PhraseMatch> found;
  for (std::size_t at = 0; at < tokens.size();) {
    const auto phrases = by_first_stem_.find(tokens[at].stem);
    std::optional<std::size_t> end;
    if (phrases != by_first_stem_.end() && claimed[at] == 0) {
      for (const Phrase& phrase : phrases->second) {
        if (!kinds.contains(phrase.kind)) continue;
        end = match_at(phrase, tokens, claimed, at);
        if (!end) continue;
        found.push_back({phrase.kind, phrase.id, at, *end});
        break;
      }
    }
    at = end.value_or(at + 1);
  }
  return found;
}

}  // namespace shoplore
