// Reads checks out of a note, with how they went: by a word ("linkage stiff by hand") or by a
// reading ("battery at rest 11.9 V") held against the range the vocabulary expects.
//
// A check with neither is none: the note may only plan it. A word outranks the reading. A reading
// without a check stays an item of its own; one that a check took is both. A part that is named
// with how it is ("tone ring cracked", "pads 2 mm") stands for the one check that tells about that
// part before all others and has no unit, or the reading's; reading_chosen then says so.
// A bare noun ("linkage") is of the part that the words around it tell (bare_parts.hpp).
// Lifetime: refers to the vocabulary and the bare parts. Threads: read-only after construction, any
// thread.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "indexer/bare_parts.hpp"
#include "indexer/note_page.hpp"
#include "indexer/telling_words.hpp"

namespace shoplore {

class CheckReader {
 public:
  CheckReader(const Vocabulary& vocabulary, const BareParts& bare_parts);

  // Claims what it read. Requires: readings are on the page already (reading_reader.hpp).
  void read(NotePage& page) const;
  // Those of which the thing was said before ("headlamp out. Supply 12.2 V"), after all others and
  // after the findings: what is left may be a check.
  void read_carried(NotePage& page) const;

  [[nodiscard]] const TellingWords& words() const { return words_; }
  [[nodiscard]] const BareParts& bare_parts() const { return bare_parts_; }

  // The one check that first of all tells about this part, and measures in that unit's quantity, or
  // has no unit when none is given; nullptr when there is none or several.
  [[nodiscard]] const Entry* check_of(std::string_view component, std::string_view unit) const;

 private:
  const Vocabulary& vocabulary_;
  const BareParts& bare_parts_;
  TellingWords words_;
  std::map<std::string, std::vector<const Entry*>, std::less<>> by_component_;
};

}  // namespace shoplore
