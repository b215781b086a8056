// What hurried people do to a record: leave fields out, put things where they do not belong.
//
// One record in twenty is spoiled so. What ranking reads is never changed for a reason that has to
// do with the cause: the codes of a spoiled record may stand in the notes alone, but whether they
// do is drawn without looking at them, so truth.hpp stays exact. Threads: one per Random.
#pragma once

#include "corpus-demo/random.hpp"
#include "indexer/case_record.hpp"

namespace shoplore {

inline constexpr double kMessyShare = 0.05;                                 // of closed cases
inline constexpr double kCodesInTextOnly = 0.25, kComplaintInNotes = 0.25;  // of messy ones

// At least one of: fields left out, the make in the wrong case, the complaint in the notes, a word
// twice, the codes in the notes only, the mileage told in miles. Requires: texts are written.
void spoil(Case& record, Random& random);

}  // namespace shoplore
