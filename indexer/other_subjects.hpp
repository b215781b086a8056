// Whose finding a bare word is: "hums" tells of a wheel, but "pump hums" of the pump.
//
// A symptom that one word alone tells is another thing's when a part stands right before it that
// neither the symptom's own words nor the parts it tells of name.
// Lifetime: a value; refers to nothing. Threads: read-only after construction, any thread.
#pragma once

#include <string>
#include <unordered_map>
#include <unordered_set>

#include "indexer/note_page.hpp"

namespace shoplore {

class OtherSubjects {
 public:
  explicit OtherSubjects(const Vocabulary& vocabulary);

  // Requires: match is of the page. False of what is no symptom or has several words.
  [[nodiscard]] bool is_of_another(const NotePage& page, const PhraseMatch& match) const;

 private:
  std::unordered_set<std::string> nouns_;  // stems that parts' names end in
  std::unordered_map<std::string, std::unordered_set<std::string>> own_;  // stems by symptom
};

}  // namespace shoplore
