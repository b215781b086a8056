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

// Everyday words of notes, in order: no misspellings of a word of the trade, and alone no hint at
// one.
constexpr auto kEveryday = std::to_array<std::string_view>(
    {"above",    "advised",   "afternoon", "ahead",    "almost",   "although", "another",
     "anything", "arrived",   "asked",     "asking",   "away",     "back",     "became",
     "because",  "before",    "began",     "behind",   "believes", "below",    "best",
     "better",   "between",   "booked",    "both",     "bought",   "bring",    "call",
     "called",   "calling",   "cannot",    "cause",    "caused",   "certain",  "client",
     "collect",  "company",   "complain",  "concern",  "corner",   "course",   "customer",
     "daily",    "date",      "dealer",    "delivery", "down",     "drive",    "driven",
     "driver",   "during",    "each",      "early",    "either",   "else",     "even",
     "evening",  "ever",      "except",    "expect",   "extra",    "fail",     "failed",
     "fails",    "feel",      "feels",     "felt",     "few",      "first",    "five",
     "follow",   "four",      "friday",    "garage",   "give",     "gone",     "good",
     "half",     "happen",    "happens",   "hard",     "help",     "here",     "high",
     "hill",     "hold",      "home",      "hour",     "hours",    "however",  "inside",
     "instead",  "keep",      "keeps",     "kept",     "knew",     "know",     "known",
     "lady",     "last",      "late",      "later",    "least",    "leave",    "left",
     "less",     "like",      "line",      "little",   "lives",    "long",     "longer",
     "look",     "looks",     "low",       "made",     "make",     "makes",    "many",
     "market",   "maybe",     "mentions",  "mobile",   "monday",   "money",    "month",
     "months",   "more",      "morning",   "most",     "mostly",   "much",     "must",
     "near",     "need",      "needs",     "next",     "nice",     "night",    "none",
     "nothing",  "notice",    "off",       "only",     "open",     "order",    "outside",
     "over",     "owner",     "parked",    "people",   "perhaps",  "phone",    "place",
     "please",   "possible",  "price",     "problem",  "quite",    "quote",    "rang",
     "rather",   "really",    "reported",  "reports",  "return",   "road",     "same",
     "saturday", "second",    "seems",     "seen",     "several",  "shop",     "short",
     "shows",    "side",      "something", "soon",     "still",    "straight", "such",
     "sunday",   "sure",      "take",      "takes",    "team",     "tell",     "test",
     "tested",   "thank",     "thanks",    "thing",    "things",   "thought",  "thursday",
     "time",     "today",     "together",  "told",     "tomorrow", "tonight",  "took",
     "town",     "trip",      "tuesday",   "twice",    "unable",   "used",     "using",
     "usual",    "vehicle",   "visit",     "wait",     "waiting",  "want",     "wanted",
     "wants",    "week",      "well",      "went",     "what",     "when",     "which",
     "wife",     "will",      "wish",      "within",   "work",     "worked",   "works",
     "year",     "yesterday", "young"});

bool is_everyday(const std::string& word) {
  return std::binary_search(kEveryday.begin(), kEveryday.end(), word);
}

bool says_nothing(const std::string& word) {
  return word.size() < kShortestStart || is_stop_word(word) || is_ordinary(word) ||
         is_everyday(word) || is_negation(word) || word.find_first_of("0123456789") != word.npos;
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
      const std::size_t number =
          stem_numbers_.emplace(stem(word.text), by_stem_.size()).first->second;
      by_stem_.resize(stem_numbers_.size());
      by_stem_[number].push_back(known->second);
      words_.push_back({word.text, number, letters_of(word.text), {}});
      if (word.text.size() >= kShortestOneEdit && !is_stop_word(word.text)) {
        misspellable_.push_back(known->second);
      }
    }
    words_[known->second].phrases.push_back(phrases_.size());
    phrase.words.push_back(known->second);
  }
  phrases_.push_back(std::move(phrase));
}

std::vector<WordSuggester::Candidate> WordSuggester::candidates(const std::string& written) const {
  std::vector<Candidate> found;
  if (const auto same = stem_numbers_.find(stem(written)); same != stem_numbers_.end()) {
    for (const std::size_t word : by_stem_[same->second]) found.push_back({word, 0});
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
  for (const std::size_t i : misspellable_) {
    const KnownWord& known = words_[i];
    const std::size_t allowed = known.text[0] == written[0] ? most : 1;
    const std::size_t longer = std::max(known.text.size(), written.size());
    if (longer - std::min(known.text.size(), written.size()) > allowed) continue;
    const auto apart = static_cast<std::size_t>(std::popcount(known.letters ^ letters));
    if (apart > 2 * allowed) continue;
    if (const auto edits = edits_between(written, known.text, allowed)) {
      found.push_back({i, *edits});
    }
  }
  return found;
}

std::size_t WordSuggester::strangers_in(const Phrase& phrase,
                                        const std::vector<std::size_t>& stems) const {
  std::set<std::size_t> met;
  for (const std::size_t word : phrase.words) {
    const std::size_t number = words_[word].stem;
    if (std::binary_search(stems.begin(), stems.end(), number)) met.insert(number);
  }
  return stems.size() - met.size();
}

std::vector<Suggestion> WordSuggester::best_of(const std::vector<Candidate>& candidates,
                                               const std::vector<std::size_t>& stems) const {
  using Rank = std::tuple<std::size_t, std::size_t, std::size_t, bool, std::size_t>;
  std::vector<Rank> ranks;
  for (const Candidate& candidate : candidates) {
    for (const std::size_t number : words_[candidate.word].phrases) {
      const Phrase& phrase = phrases_[number];
      ranks.emplace_back(strangers_in(phrase, stems), candidate.edits, phrase.words.size(),
                         !phrase.is_name, phrase.entry);
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
  std::vector<std::size_t> stems;
  for (const std::string& text : words) {
    for (const Word& word : words_of(text)) {
      const auto known = stem_numbers_.find(stem(word.text));
      if (!says_nothing(word.text) && known != stem_numbers_.end()) stems.push_back(known->second);
    }
  }
  std::sort(stems.begin(), stems.end());
  stems.erase(std::unique(stems.begin(), stems.end()), stems.end());
  std::set<std::string> seen;
  std::vector<WordSuggestions> out;
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
