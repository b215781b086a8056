#include "indexer/phrase_matcher.hpp"

#include <algorithm>

#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShortestRespelt = 5;
constexpr std::size_t kLongestShorthand = 3;

// Whether the text between two words parts them: a mark of punctuation, but neither the point of
// a number ("12.6") nor of a shortened word before its number ("cyl. 3").
bool ends_clause(std::string_view text, const Word& before, const Word& after) {
  const std::string_view between = text.substr(before.end, after.begin - before.end);
  if (between == "." || between == ",") return false;
  const bool numbered =
      (before.text == "cyl" || before.text == "no") && after.text[0] >= '0' && after.text[0] <= '9';
  if (numbered && between == ". ") return false;
  return between.find_first_of(",;.:!?\n") != between.npos;
}

// Whether the words are written without a space between them: "w/o", not "w o".
bool written_together(std::string_view text, const Word& first, const Word& last) {
  return text.substr(first.begin, last.end - first.begin).find_first_of(" \t\n") ==
         std::string_view::npos;
}

// "coil & plugs", "misfire/whistle": the sign as the word that it stands for. A slash only between
// whole words: "a/c" is one.
std::optional<Token> sign_between(std::string_view text, const Word& before, const Word& after,
                                  std::size_t clause) {
  const std::string_view between = text.substr(before.end, after.begin - before.end);
  const std::size_t sign = between.find_first_of("&+/");
  if (sign == between.npos) return std::nullopt;
  const std::size_t at = before.end + sign;
  if (between[sign] != '/') return Token{"and", "and", at, at + 1, clause};
  if (before.text.size() < 3 || after.text.size() < 3) return std::nullopt;
  return Token{"or", "or", at, at + 1, clause};
}

// Whether a word may stand between two words of a phrase: "linkage [is] stiff [by] hand". Never
// one that joins two things: "turbo and actuator" is no turbo actuator.
bool may_stand_between(EntryKind kind, std::string_view word) {
  if (kind == EntryKind::kCheck && (says_pass(word) || says_fail(word))) return true;
  return is_stop_word(word) && word != "and" && word != "or" && word != "but";
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
  if (word.size() < kShortestRespelt || has_digit || is_ordinary(word) || is_stop_word(word) ||
      known_stems_.contains(stem(word))) {
    return word;
  }
  // A word of the trade before an ordinary one: "whisle" is "whistle" rather than "while".
  std::string found;
  // The set is in order, so the words with this first letter lie together.
  for (auto at = known_words_.lower_bound(word.substr(0, 1));
       at != known_words_.end() && (*at)[0] == word[0]; ++at) {
    const std::string& known = *at;
    if (known.size() < kShortestRespelt || !is_one_edit(word, known)) continue;
    const bool is_first = found.empty() || (is_ordinary(found) && !is_ordinary(known));
    // Two candidates with one stem are one word; with two stems nobody can tell.
    if (!is_first && is_ordinary(known) == is_ordinary(found) && stem(found) != stem(known)) {
      return word;
    }
    if (is_first || !is_ordinary(known)) found = known;
  }
  return found.empty() ? word : found;
}

PhraseMatcher::Written PhraseMatcher::expanded(std::string_view text,
                                               const std::vector<Word>& words,
                                               std::size_t at) const {
  for (std::size_t n = std::min(kLongestShorthand, words.size() - at); n > 0; --n) {
    if (!written_together(text, words[at], words[at + n - 1])) continue;
    std::vector<std::string> key;
    for (std::size_t k = 0; k < n; ++k) key.push_back(words[at + k].text);
    auto found = shorthand_.find(key);
    // "R&R'd" is "R&R" in the past.
    if (found == shorthand_.end() && key.back().ends_with("'d")) {
      key.back().resize(key.back().size() - 2);
      found = shorthand_.find(key);
    }
    if (found != shorthand_.end()) return {found->second, n};
  }
  return {{words[at].text}, 1};
}

std::vector<Token> PhraseMatcher::tokens_of(std::string_view text,
                                            const std::set<std::string>& keep) const {
  const std::vector<Word> words = words_of(text);
  std::vector<Token> tokens;
  // Spelling and stem by word: reports say the same words again and again.
  std::unordered_map<std::string, std::pair<std::string, std::string>> seen;
  std::size_t clause = 0;
  for (std::size_t i = 0; i < words.size();) {
    if (i > 0 && ends_clause(text, words[i - 1], words[i])) ++clause;
    if (auto join = i > 0 ? sign_between(text, words[i - 1], words[i], clause) : std::nullopt) {
      tokens.push_back(std::move(*join));
    }
    Written written = expanded(text, words, i);
    for (const std::string& word : written.words) {
      const auto [known, is_new] = seen.try_emplace(word);
      if (is_new) {
        known->second.first = keep.contains(word) ? word : respelt(word);
        known->second.second = stem(known->second.first);
      }
      const auto& [spelt, stemmed] = known->second;
      tokens.push_back({spelt, stemmed, words[i].begin, words[i + written.taken - 1].end, clause});
    }
    i += written.taken;
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
    const bool gap = k > 0 && next < tokens.size() && claimed[next] == 0 &&
                     may_stand_between(phrase.kind, tokens[next].text);
    if (!fits(next) && gap) ++next;
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
