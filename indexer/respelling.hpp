// Puts right a misspelt word: the one known word that is a single edit away.
//
// Words of five letters or more, without digits, that are neither known, ordinary nor English are
// respelt; where two known words of different stems are equally near, nobody can tell and the word
// stays. A word of the trade goes before an ordinary one.
// Lifetime: a value. Threads: read-only once every word was added, any thread.
#pragma once

#include <map>
#include <set>
#include <string>
#include <unordered_set>
#include <utility>

namespace shoplore {

class Respelling {
 public:
  // A word as the vocabulary writes it, a candidate.
  void add_word(const std::string& word);
  // The stem of a word that is right as it stands (phrase_form.hpp).
  void add_stem(const std::string& stemmed) { known_stems_.insert(stemmed); }

  [[nodiscard]] bool knows_stem(const std::string& stemmed) const {
    return known_stems_.contains(stemmed);
  }

  // The word put right, or the word itself.
  [[nodiscard]] std::string respelt(const std::string& word) const;

 private:
  std::unordered_set<std::string> known_words_, known_stems_;
  // Candidates by first letter and length: a note of hundreds of unknown words may not compare each
  // with all.
  std::map<std::pair<char, std::size_t>, std::set<std::string>> words_;
};

}  // namespace shoplore
