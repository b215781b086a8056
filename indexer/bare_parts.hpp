// Which component a bare noun means: "ABS lamp on, sensor new" is a wheel speed sensor.
//
// A noun that ends the names of several components ("sensor", "pump", "fluid") means the one whose
// other words were said just before, or that the findings of the note tell about first. When two
// fit equally well, nobody can tell and nothing is found.
// Does not ask what was done to it (repair_reader.hpp). Lifetime: a value; refers to nothing.
// Threads: read-only after construction, any thread.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

class BareParts {
 public:
  explicit BareParts(const Vocabulary& vocabulary);

  // The component that the noun at this token means. told: what the findings of the note tell
  // about, the first component of each with weight 1, the next with less.
  [[nodiscard]] std::optional<std::string> at(const NotePage& page, std::size_t token,
                                              const std::map<std::string, double>& told) const;

 private:
  struct Part {
    std::string id;
    std::set<std::string> words;  // stems of its names but the noun
  };
  std::unordered_map<std::string, std::vector<Part>> by_noun_;  // stem
};

// What the findings that the note's phrases name tell about, for BareParts.
[[nodiscard]] std::map<std::string, double> components_told(
    const Vocabulary& vocabulary, const std::vector<PhraseMatch>& findings);

}  // namespace shoplore
