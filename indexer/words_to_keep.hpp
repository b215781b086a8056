// Words that look like a plate or a name and are not: engine families ("BW16D"), vocabulary names
// and ids, and the trade's own units and abbreviations, which are always kept.
//
// Lifetime: a plain value. Threads: read-only after filling, any thread.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace shoplore {

class WordsToKeep {
 public:
  WordsToKeep() = default;

  // Each entry is kept whole, and so is each of its words ("blend-door gear").
  explicit WordsToKeep(const std::vector<std::string>& entries);
  void add(std::string_view entry);

  // Whether this is an added entry, compared by letters and digits in any case.
  [[nodiscard]] bool has_entry(std::string_view entry) const;

  // Whether this is a word of an added entry, or one of the trade's. Requires: folded, that is
  // upper case without accents (folded_text.hpp).
  [[nodiscard]] bool has_word(std::string_view folded) const;

 private:
  std::set<std::string, std::less<>> entries_, words_;
};

// Units of the trade and how they are typed: "NM", "RPM", "KM". Requires: folded.
[[nodiscard]] bool is_unit(std::string_view folded);

// Short words of ordinary language: "AT", "THE". Requires: folded.
[[nodiscard]] bool is_common_word(std::string_view folded);

}  // namespace shoplore
