// Which check or symptom a clause is about, by all its words together: for what no phrase of the
// vocabulary says outright ("pumped the cooling system up to 1.2 bar and watched it").
//
// Every entry's name and phrases are counted word by word; a clause's words are weighed by how much
// more often they stand in one entry's texts than in all (multinomial naive Bayes, smoothed toward
// the whole). A guess needs at least two telling words and a clear lead, a clearer one for a
// symptom, since most of what people write is no symptom; and a symptom needs a telling word that
// is in no part's name ("timing chain is original" tells of no rattle). Does not look for verdicts,
// readings or negations (check_reader.hpp, finding_reader.hpp). Lifetime: a value; refers to
// nothing. Threads: read-only after construction, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

class TellingWords {
 public:
  // Requires: kind is kCheck or kSymptom.
  TellingWords(const Vocabulary& vocabulary, EntryKind kind);

  struct Guess {
    std::string id;
    double lead = 0;                   // log-odds before the next entry
    std::vector<std::size_t> telling;  // positions in the words given
  };
  // Stems as phrase_form.hpp gives them; those that say nothing may be left in.
  [[nodiscard]] std::optional<Guess> guess(const std::vector<std::string>& stems) const;

 private:
  struct WordUse {
    std::size_t entry = 0;
    double weight = 0;  // ln(theta / background)
  };
  // Log-odds before the next entry, and of the clause being about this entry rather than any.
  struct Least {
    double lead = 0, score = 0;
  };
  EntryKind kind_;
  Least least_;
  std::vector<std::string> ids_;
  std::unordered_map<std::string, std::vector<WordUse>> uses_;
  std::unordered_map<std::string, double> missing_;  // weight where an entry's texts lack the word
  std::unordered_set<std::string> part_stems_;       // of symptoms only: words of parts' names
};

// Words that tell which check it was rather than how it went.
[[nodiscard]] bool tells_check(std::string_view word);

// Words that tell a symptom: all but stop words and numbers.
[[nodiscard]] bool tells_symptom(std::string_view word);

}  // namespace shoplore
