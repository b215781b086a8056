#include "indexer/vocabulary_search.hpp"

#include <algorithm>
#include <tuple>

#include "indexer/edit_distance.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kShortestMisspelt = 4;  // letters
constexpr std::size_t kNearIds = 3;

std::string id_as_words(std::string_view id) {
  std::string words(id);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

bool is_same_phrase(const std::vector<Word>& a, const std::vector<Word>& b) {
  return !a.empty() && std::equal(a.begin(), a.end(), b.begin(), b.end(), [](auto& x, auto& y) {
    return x.text == y.text || (x.text[0] == y.text[0] && stem(x.text) == stem(y.text));
  });
}

bool is_begun(const std::string& start, const std::vector<Word>& words) {
  return std::any_of(words.begin(), words.end(),
                     [&](const Word& word) { return word.text.starts_with(start); });
}

bool is_nearly(const std::string& written, const std::vector<Word>& words) {
  return written.size() >= kShortestMisspelt &&
         std::any_of(words.begin(), words.end(), [&](const Word& word) {
           return word.text.size() >= kShortestMisspelt && edits_between(written, word.text, 1);
         });
}

std::optional<MatchedBy> matched_by(const std::vector<Word>& searched,
                                    const std::vector<Word>& text) {
  if (is_same_phrase(searched, text)) return MatchedBy::kWholePhrase;
  MatchedBy by = MatchedBy::kWordStarts;
  for (const Word& word : searched) {
    if (is_begun(word.text, text)) continue;
    if (!is_nearly(word.text, text)) return std::nullopt;
    by = MatchedBy::kOneEdit;
  }
  return by;
}

struct Ranked {
  VocabularyMatch match;
  std::size_t words = 0;  // of the text
  int place = 0;          // name, phrase, id
  auto key() const { return std::tie(match.by, words, place); }
};

// The best of an entry's texts; nothing when none matches.
std::optional<Ranked> best_of(const Entry& entry, const std::vector<Word>& searched) {
  std::optional<Ranked> best;
  const auto look_at = [&](const std::string& text, int place) {
    const std::vector<Word> words = words_of(text);
    const auto by = matched_by(searched, words);
    if (!by) return;
    Ranked ranked{{&entry, text, *by}, words.size(), place};
    if (!best || ranked.key() < best->key()) best = std::move(ranked);
  };
  look_at(entry.name, 0);
  // Every name matches nothing in particular: no phrase says it better.
  if (searched.empty()) return best;
  for (const std::string& phrase : entry.phrases) look_at(phrase, 1);
  look_at(id_as_words(entry.id), 2);
  if (best && best->place == 2) best->match.phrase = entry.id;
  return best;
}

}  // namespace

VocabularyMatches vocabulary_search(const Vocabulary& vocabulary, const VocabularySearch& search) {
  const std::vector<Word> searched = words_of(id_as_words(search.words));
  std::vector<Ranked> ranked;
  for (const auto& [kind, name] : kEnumNames<EntryKind>) {
    if (search.kind && *search.kind != kind) continue;
    for (const auto& [id, entry] : vocabulary.entries(kind)) {
      if (search.retired == RetiredEntries::kLeftOut && !entry.retired.empty()) continue;
      if (auto best = best_of(entry, searched)) ranked.push_back(std::move(*best));
    }
  }
  if (!searched.empty()) {
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const Ranked& a, const Ranked& b) { return a.key() < b.key(); });
  }
  const auto first_misspelt = std::find_if(ranked.begin(), ranked.end(), [](const Ranked& each) {
    return each.match.by == MatchedBy::kOneEdit;
  });
  if (first_misspelt != ranked.begin()) ranked.erase(first_misspelt, ranked.end());
  VocabularyMatches out;
  out.found = ranked.size();
  ranked.resize(std::min(ranked.size(), search.limit));
  for (Ranked& each : ranked) out.matches.push_back(std::move(each.match));
  return out;
}

std::vector<std::string> near_ids(const Vocabulary& vocabulary, EntryKind kind,
                                  std::string_view id) {
  const std::string written = lower_case(id);
  const std::size_t most = written.size() < 6 ? 1 : 2;
  std::vector<std::pair<std::size_t, std::string>> near;
  for (const auto& [known, entry] : vocabulary.entries(kind)) {
    if (!entry.retired.empty()) continue;
    if (const auto edits = edits_between(written, lower_case(known), most)) {
      near.emplace_back(*edits, known);
    }
  }
  std::sort(near.begin(), near.end());
  const auto found =
      vocabulary_search(vocabulary, {written, kind, RetiredEntries::kLeftOut, kNearIds});
  std::vector<std::string> ids;
  const auto take = [&](const std::string& each) {
    const bool is_new = std::find(ids.begin(), ids.end(), each) == ids.end();
    if (is_new && ids.size() < kNearIds) ids.push_back(each);
  };
  for (const auto& [edits, each] : near) take(each);
  for (const VocabularyMatch& match : found.matches) take(match.entry->id);
  return ids;
}

}  // namespace shoplore
