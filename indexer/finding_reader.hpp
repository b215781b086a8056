// Reads findings out of a note: symptoms, conditions and work signs, present or absent, and how
// often.
//
// What a negation reaches is told in denials.hpp.
// A condition denied ("not uphill") is none and stays unread. A cylinder number is read with its
// symptom and dropped. Pure functions, any thread.
#pragma once

#include "indexer/conditioned_phrases.hpp"
#include "indexer/note_page.hpp"
#include "indexer/other_subjects.hpp"
#include "indexer/telling_words.hpp"

namespace shoplore {

// What is known of symptoms beyond their phrases; must outlive the reading.
struct FindingAids {
  const TellingWords& telling;
  const ConditionedPhrases& conditioned;
  const OtherSubjects& subjects;
};

// Claims what it read.
void read_findings(NotePage& page, const Vocabulary& vocabulary, const FindingAids& aids);

// "drop 0.4 V under load": how a check was done, not when something happens; idle apart, which is
// said of the vehicle too. Requires: all checks are on the page.
void drop_conditions_of_checks(NotePage& page);

}  // namespace shoplore
