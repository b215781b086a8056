// The workshop's own words for a drawn case: shorthand, typos, mixed case, and never a person,
// another shop by name, a plate or a number to ring.
//
// Says only what the record already holds (its listed symptoms, conditions, codes, checks, fixes),
// so a text never knows more than the evidence; the notes of a closed case tell the cause.
// Symptoms are called by the vocabulary's phrases. Threads: one per Random.
#pragma once

#include <string>

#include "corpus-demo/patterns.hpp"
#include "corpus-demo/random.hpp"
#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// How carefully a case is written. Terse ones hold a few words and no more.
enum class Care { kOrdinary, kTerse };

[[nodiscard]] std::string complaint_text(const Case& record, const Vocabulary& vocabulary,
                                         Care care, Random& random);

// Requires: the record's checks, cause, correction and outcome are filled in.
[[nodiscard]] std::string notes_text(const Case& record, const FailurePattern& pattern,
                                     const Vocabulary& vocabulary, Care care, Random& random);

// Of a visit without complaint, by its kind.
[[nodiscard]] std::string visit_text(VisitKind kind, Random& random);

// Of a case that ended without a cause, by how it ended.
[[nodiscard]] std::string ended_text(EndedHow how, Random& random);

}  // namespace shoplore
