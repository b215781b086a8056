// Finds phrases of which one word, the thing spoken of, was said earlier: "clutch slips uphill. No
// judder, pedal not heavy" says that the clutch does not judder and its pedal is not heavy.
//
// For what PhraseMatcher's own matches leave. The thing is a word that ends the name of a
// component, or one of a few that name a group of them ("brake", "engine"); it may stand in the
// same clause, claimed or not, or in one of the kClausesBack before. The nearest thing decides;
// when two entries are equally near, nothing is found.
// Lifetime: refers to the matcher. Threads: read-only after construction, any thread.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "indexer/phrase_matcher.hpp"

namespace shoplore {

class CarriedPhrases {
 public:
  static constexpr std::size_t kClausesBack = 3;

  CarriedPhrases(const Vocabulary& vocabulary, const PhraseMatcher& matcher);

  // Matches of these kinds over tokens that are not claimed; the range is of the words said here,
  // without the thing.
  [[nodiscard]] std::vector<PhraseMatch> matches(const std::vector<Token>& tokens,
                                                 const std::vector<char>& claimed,
                                                 const std::set<EntryKind>& kinds) const;

  // The entry that a match of a few words is of when the thing that those words lack was said
  // before: "motor current" of the parking brake rather than of a window. Empty: the match's own.
  [[nodiscard]] std::string sense_of(const std::vector<Token>& tokens,
                                     const PhraseMatch& match) const;

 private:
  // A phrase without its thing.
  struct Rest {
    EntryKind kind;
    const std::string* id;
    std::string_view thing;
    std::vector<std::string_view> stems;
    Presence state;
  };
  struct Found {
    const Rest* rest = nullptr;
    std::size_t first = 0, last = 0;  // tokens said here
    std::size_t thing = 0;            // the token of the thing
    bool is_tied = false;
  };
  void add(const PhraseMatcher::Phrase& phrase);
  [[nodiscard]] Found best_at(const std::vector<Token>& tokens, const std::vector<char>& claimed,
                              const std::set<EntryKind>& kinds, std::size_t at) const;

  std::unordered_set<std::string> things_;  // stems
  std::unordered_map<std::string_view, std::vector<Rest>> by_first_;
};

}  // namespace shoplore
