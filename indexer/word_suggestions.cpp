// Misspellings are looked for among all known words, a few thousand. Comparing letter by letter
// is the dear part, so two cheap tests come before it: the lengths, and the sets of letters, of
// which one edit changes at most two.
#include "indexer/word_suggestions.hpp"

#include <algorithm>
#include <bit>
#include <set>
#include <tuple>

#include "indexer/edit_distance.hpp"
#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShortestStart = 3, kShortestOneEdit = 4, kShortestTwoEdits = 6;  // letters

std::uint32_t letters_of(std::string_view word) {
  std::uint32_t letters = 0;
  for (const char c : word) {
    if (c >= 'a' && c <= 'z') letters |= std::uint32_t{1} << static_cast<unsigned>(c - 'a');
  }
  return letters;
}

bool says_nothing(const std::string& word) {
  return word.size() < kShortestStart || is_stop_word(word) || is_ordinary(word) ||
         is_negation(word) || word.find_first_of("0123456789") != word.npos;
}

}  // namespace

WordSuggester::WordSuggester(const Vocabulary& vocabulary) {
  for (const EntryKind kind :
       {EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kCheck, EntryKind::kComponent,
        EntryKind::kAction, EntryKind::kWorkSign, EntryKind::kVehicleModel}) {
    std::map<std::string, std::size_t, std::less<>> numbers;
    for (const auto& [id, entry] : vocabulary.entries(kind)) {
      const Entry* meant = vocabulary.find(kind, vocabulary.canonical(kind, id));
      if (!entry.retired.empty() || !meant->retired.empty()) continue;
      const auto [number, is_new] = numbers.emplace(meant->id, entries_.size());
      if (is_new) entries_.push_back({kind, meant->id, meant->name});
      add(number->second, entry.name, meant == &entry);
      for (const std::string& phrase : entry.phrases) add(number->second, phrase, false);
    }
  }
}

void WordSuggester::add(std::size_t entry, std::string_view text, bool is_name) {
  Phrase phrase{entry, is_name, {}};
  for (Word& word : words_of(text)) {
    const auto [known, is_new] = by_text_.emplace(word.text, words_.size());
    if (is_new) {
      words_.push_back({word.text, stem(word.text), letters_of(word.text), {}});
      by_stem_[words_.back().stem].push_back(known->second);
    }
    words_[known->second].phrases.push_back(phrases_.size());
    phrase.words.push_back(known->second);
  }
  phrases_.push_back(std::move(phrase));
}

std::vector<WordSuggester::Candidate> WordSuggester::candidates(const std::string& written) const {
  std::vector<Candidate> found;
  if (const auto same = by_stem_.find(stem(written)); same != by_stem_.end()) {
    for (const std::size_t word : same->second) found.push_back({word, 0});
  }
  if (!found.empty()) return found;
  for (auto at = by_text_.lower_bound(written);
       at != by_text_.end() && at->first.starts_with(written); ++at) {
    found.push_back({at->second, 0});
  }
  return found.empty() ? misspelt(written) : found;
}

std::vector<WordSuggester::Candidate> WordSuggester::misspelt(const std::string& written) const {
  if (written.size() < kShortestOneEdit) return {};
  const std::size_t most = written.size() < kShortestTwoEdits ? 1 : 2;
  const std::uint32_t letters = letters_of(written);
  std::vector<Candidate> found;
  for (std::size_t i = 0; i < words_.size(); ++i) {
    const KnownWord& known = words_[i];
    if (known.text.size() < kShortestOneEdit || is_stop_word(known.text)) continue;
    const std::size_t allowed = known.text[0] == written[0] ? most : 1;
    const auto apart = static_cast<std::size_t>(std::popcount(known.letters ^ letters));
    if (apart > 2 * allowed) continue;
    if (const auto edits = edits_between(written, known.text, allowed)) {
      found.push_back({i, *edits});
    }
  }
  return found;
}

std::vector<Suggestion> WordSuggester::best_of(const std::vector<Candidate>& candidates,
                                               const std::vector<std::string>& stems) const {
  using Rank = std::tuple<std::size_t, std::size_t, std::size_t, bool, std::size_t>;
  std::vector<Rank> ranks;
  for (const Candidate& candidate : candidates) {
    for (const std::size_t number : words_[candidate.word].phrases) {
      const Phrase& phrase = phrases_[number];
      std::size_t strangers = stems.size();
      for (const std::string& each : stems) {
        const bool is_there =
            std::any_of(phrase.words.begin(), phrase.words.end(),
                        [&](const std::size_t word) { return words_[word].stem == each; });
        strangers -= is_there ? 1 : 0;
      }
      ranks.emplace_back(strangers, candidate.edits, phrase.words.size(), !phrase.is_name,
                         phrase.entry);
    }
  }
  std::sort(ranks.begin(), ranks.end());
  std::vector<Suggestion> best;
  std::set<std::size_t> taken;
  for (const Rank& rank : ranks) {
    if (best.size() == kMaxSuggestions) break;
    const std::size_t entry = std::get<4>(rank);
    if (taken.insert(entry).second) best.push_back(entries_[entry]);
  }
  return best;
}

std::vector<WordSuggestions> WordSuggester::suggest(const std::vector<std::string>& words) const {
  std::vector<std::string> stems;
  std::set<std::string> seen;
  for (const std::string& text : words) {
    for (const Word& word : words_of(text)) {
      if (!says_nothing(word.text) && seen.insert(word.text).second) {
        stems.push_back(stem(word.text));
      }
    }
  }
  std::vector<WordSuggestions> out;
  seen.clear();
  for (const std::string& text : words) {
    // What was not understood is a word, or a few joined without a space ("12.6").
    const auto parts = words_of(text);
    const bool is_word = parts.size() == 1 && !says_nothing(parts.front().text);
    if (!is_word || !seen.insert(parts.front().text).second) continue;
    auto best = best_of(candidates(parts.front().text), stems);
    if (!best.empty()) out.push_back({text, std::move(best)});
  }
  return out;
}

}  // namespace shoplore
