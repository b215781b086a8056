// Finds symptoms that the vocabulary names together with a condition, where the note puts the
// condition another way: "knocks over bumps" is known, so "knocks over potholes" is too.
//
// A phrase that ends in a phrase of a condition gives its beginning and that condition; in a note
// the beginning must stand right before any phrase of the condition. A beginning that two symptoms
// share under one condition finds nothing.
// Lifetime: a value; refers to nothing. Threads: read-only after construction, any thread.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "indexer/phrase_matcher.hpp"

namespace shoplore {

class ConditionedPhrases {
 public:
  explicit ConditionedPhrases(const PhraseMatcher& matcher);

  // The symptoms before these conditions, the longest beginning at each; the range is of the
  // beginning alone. Requires: conditions are matches over the tokens.
  [[nodiscard]] std::vector<PhraseMatch> matches(const std::vector<Token>& tokens,
                                                 const std::vector<PhraseMatch>& conditions) const;

 private:
  struct Beginning {
    std::vector<std::string> stems;
    std::string id;  // empty: several symptoms
    Presence state = Presence::kPresent;
  };
  std::map<std::string, std::vector<Beginning>> by_condition_;  // longest first
};

}  // namespace shoplore
