// What may have been meant by words that nobody understood: up to three vocabulary names a word.
//
// Only offers: nothing here counts as evidence, and no word is replaced (the recogniser mends
// single letters by itself). Not offered are retired entries; an alias offers what stands for it.
// No suggestion for stop words, ordinary words (note_words.hpp), everyday English ("called" is no
// "cable", "off" alone hints at nothing), words with a digit and words of one or two letters.
// Lifetime: refers to nothing after construction; make one a vocabulary (some milliseconds).
// Threads: read-only, any thread. Cannot fail. Twenty words take well under a millisecond.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

struct Suggestion {
  EntryKind kind = EntryKind::kSymptom;
  std::string id, name;  // a vehicle model's name with its make
  friend bool operator==(const Suggestion&, const Suggestion&) = default;
};

struct WordSuggestions {
  std::string word;                     // as it was given
  std::vector<Suggestion> suggestions;  // likeliest first, one to three
};

inline constexpr std::size_t kMaxSuggestions = 3;

class WordSuggester {
 public:
  // Symptoms, conditions, checks, components, actions, work signs and vehicle models.
  explicit WordSuggester(const Vocabulary& vocabulary);

  // Of the words in their order, each once; those without a suggestion are left out. The first of
  // these ways that offers anything is used:
  // - the word stands in a phrase (stems compared);
  // - it begins a word of a phrase: three letters or more;
  // - it is one edit from a word of a phrase, for four and five letters, or two, for more; two
  //   edits only with the same first letter.
  // Phrases that hold more of the other words come first, then nearer words, then shorter
  // phrases, names before phrases, and the order of kinds and ids.
  [[nodiscard]] std::vector<WordSuggestions> suggest(const std::vector<std::string>& words) const;

 private:
  struct Phrase {
    std::size_t entry = 0;  // in entries_
    bool is_name = false;
    std::vector<std::size_t> words;  // in words_
  };
  struct KnownWord {
    std::string text;
    std::size_t stem = 0;       // in by_stem_
    std::uint32_t letters = 0;  // one bit a letter a to z that it holds
    std::vector<std::size_t> phrases;
  };
  struct Candidate {
    std::size_t word = 0;   // in words_
    std::size_t edits = 0;  // away from what was written
  };
  void add(std::size_t entry, std::string_view text, bool is_name);
  [[nodiscard]] std::vector<Candidate> candidates(const std::string& written) const;
  [[nodiscard]] std::vector<Candidate> misspelt(const std::string& written) const;
  // How many of the stems, in order, do not stand in the phrase.
  [[nodiscard]] std::size_t strangers_in(const Phrase& phrase,
                                         const std::vector<std::size_t>& stems) const;
  [[nodiscard]] std::vector<Suggestion> best_of(const std::vector<Candidate>& candidates,
                                                const std::vector<std::size_t>& stems) const;

  std::vector<Suggestion> entries_;
  std::vector<Phrase> phrases_;
  std::vector<KnownWord> words_;
  std::vector<std::size_t> misspellable_;                         // in words_
  std::map<std::string, std::size_t, std::less<>> by_text_;       // in words_
  std::map<std::string, std::size_t, std::less<>> stem_numbers_;  // in by_stem_
  std::vector<std::vector<std::size_t>> by_stem_;                 // in words_
};

}  // namespace shoplore
