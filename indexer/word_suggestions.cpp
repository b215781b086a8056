// Misspellings are looked for among all known words, a few thousand. Comparing letter by letter
// is the dear part, so two cheap tests come before it: the lengths, and the sets of letters, of
// which one edit changes at most two.
#include "indexer/word_suggestions.hpp"

#include <algorithm>
#include <array>
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

// Everyday words of notes, in order: known English, so no misspelling of a word of the trade.
constexpr auto kEveryday = std::to_array<std::string_view>(
    {"above",     "advised",  "afternoon", "ahead",     "almost",   "although", "another",
     "anything",  "arrived",  "asked",     "asking",    "away",     "back",     "became",
     "because",   "before",   "began",     "behind",    "believes", "below",    "best",
     "better",    "between",  "booked",    "both",      "bought",   "bring",    "call",
     "called",    "calling",  "cannot",    "cause",     "caused",   "certain",  "client",
     "collect",   "company",  "complain",  "concern",   "corner",   "course",   "customer",
     "daily",     "date",     "dealer",    "delivery",  "down",     "drive",    "driven",
     "driver",    "during",   "each",      "early",     "either",   "else",     "even",
     "evening",   "ever",     "except",    "expect",    "extra",    "feel",     "feels",
     "felt",      "few",      "first",     "five",      "follow",   "four",     "friday",
     "garage",    "give",     "gone",      "good",      "half",     "happen",   "happens",
     "hard",      "help",     "here",      "hill",      "hold",     "home",     "hour",
     "hours",     "however",  "inside",    "instead",   "keep",     "keeps",    "kept",
     "knew",      "know",     "known",     "lady",      "last",     "late",     "later",
     "least",     "leave",    "left",      "less",      "like",     "line",     "little",
     "lives",     "long",     "longer",    "look",      "looks",    "made",     "make",
     "makes",     "many",     "market",    "maybe",     "mentions", "mobile",   "monday",
     "money",     "month",    "months",    "more",      "morning",  "most",     "mostly",
     "much",      "must",     "near",      "need",      "needs",    "next",     "nice",
     "night",     "none",     "nothing",   "notice",    "only",     "order",    "outside",
     "over",      "owner",    "parked",    "people",    "perhaps",  "phone",    "place",
     "please",    "possible", "power",     "price",     "problem",  "quite",    "quote",
     "rang",      "rather",   "really",    "reported",  "reports",  "return",   "road",
     "same",      "saturday", "second",    "seems",     "seen",     "several",  "shop",
     "short",     "shows",    "side",      "something", "soon",     "still",    "straight",
     "such",      "sunday",   "sure",      "take",      "takes",    "team",     "tell",
     "thank",     "thanks",   "thing",     "things",    "thought",  "thursday", "time",
     "today",     "together", "told",      "tomorrow",  "tonight",  "took",     "town",
     "trip",      "tuesday",  "twice",     "unable",    "used",     "using",    "usual",
     "vehicle",   "visit",    "wait",      "waiting",   "want",     "wanted",   "wants",
     "week",      "well",     "went",      "what",      "when",     "which",    "wife",
     "will",      "wish",     "within",    "work",      "worked",   "works",    "year",
     "yesterday", "young"});

bool is_everyday(const std::string& word) {
  return std::binary_search(kEveryday.begin(), kEveryday.end(), word);
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
      const std::string make = meant->make.empty() ? "" : meant->make + " ";
      if (is_new) entries_.push_back({kind, meant->id, make + meant->name});
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
  if (written.size() < kShortestOneEdit || is_everyday(written)) return {};
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
