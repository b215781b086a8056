// The cause that somebody means by some words: "wastegate linkage seized open", "turbo vanes
// sticking", or its key.
//
// Only causes that the records hold cases of. Every word has to begin a word of the component's or
// the failure's name or phrases (stems compared); words that say nothing ("the", "of") are passed
// over. Reads no sentences: notes are the recogniser's.
// Lifetime: refers to the table, not to the vocabulary. Threads: read-only, any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

// Causes offered when none or several were meant.
inline constexpr std::size_t kCausesOffered = 5;

class CauseNames {
 public:
  // `seen` by CauseNumber.
  CauseNames(const CauseTable& causes, const std::vector<std::uint32_t>& seen,
             const Vocabulary& vocabulary);

  // The key of the one cause meant; of several, the one whose name the words are. kInvalidInput
  // offers what is near by its words, or those among which the words leave open.
  [[nodiscard]] Result<std::string> find(std::string_view words, std::string place) const;

  // Keys of all that the words leave open, in the order of their names; no words: all.
  [[nodiscard]] std::vector<std::string> matching(std::string_view words) const;

 private:
  struct Named {
    std::string key, name;
    std::vector<std::string> name_stems, stems;  // of its name; of everything it is called
  };
  [[nodiscard]] std::string offered(const std::vector<const Named*>& causes) const;
  [[nodiscard]] std::vector<const Named*> all_matching(const std::vector<std::string>& stems) const;
  [[nodiscard]] std::vector<const Named*> nearest(const std::vector<std::string>& stems) const;

  std::vector<Named> causes_;  // by name
};

}  // namespace shoplore
