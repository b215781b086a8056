// Which check a clause is about, by all its words together: for what no phrase of the vocabulary
// says outright ("pumped the cooling system up to 1.2 bar and watched it").
//
// Every check's name, phrases and examples are counted word by word; a clause's words are weighed
// by how much more often they stand in one check's texts than in all (multinomial naive Bayes,
// smoothed toward the whole). A guess needs at least two telling words and a clear lead.
// Does not look for verdicts or readings (check_reader.hpp). Lifetime: a value; refers to nothing.
// Threads: read-only after construction, any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/vocabulary.hpp"

namespace shoplore {

class CheckWords {
 public:
  explicit CheckWords(const Vocabulary& vocabulary);

  struct Guess {
    std::string id;
    double lead = 0;                   // log-odds before the next check
    std::vector<std::size_t> telling;  // positions in the words given
  };
  // Stems as phrase_form.hpp gives them; those that say nothing may be left in.
  [[nodiscard]] std::optional<Guess> guess(const std::vector<std::string>& stems) const;

 private:
  struct WordUse {
    std::size_t check = 0;
    double weight = 0;  // ln(theta / background)
  };
  std::vector<std::string> ids_;
  std::unordered_map<std::string, std::vector<WordUse>> uses_;
  std::unordered_map<std::string, double> missing_;  // weight where a check's texts lack the word
};

// Words that tell how a check went rather than which it was.
[[nodiscard]] bool tells_check(std::string_view word);

}  // namespace shoplore
