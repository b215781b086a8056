// Where a note names its symptoms, and which of them the words of how often are of.
//
// A symptom is one item however often it is named; "I could not make it stall. It stalls about once
// a week" says how often at the second place. Does not find symptoms (finding_reader.hpp).
// Lifetime: a value; refers to nothing. One thread at a time.
#pragma once

#include <string>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

class SymptomMentions {
 public:
  struct Mention {
    std::string id;
    Presence state = Presence::kPresent;
    TokenRange at;
  };
  void add(Mention mention) { mentions_.push_back(std::move(mention)); }

  // Gives every "now and then" of the page to the nearest symptom that is there, in its clause or
  // shortly before ("happens often": however far before), and to one that holds such a word ("is
  // sometimes not recognised"); claims the words. What was said first stays.
  void say_how_often(NotePage& page, std::vector<RecognisedItem>& items) const;

 private:
  [[nodiscard]] const Mention* near(const NotePage& page, TokenRange at) const;

  std::vector<Mention> mentions_;
};

}  // namespace shoplore
