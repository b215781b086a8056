// A closed case as an exercise: what is shown of it as it came in, and what its checks answered.
//
// Shown: vehicle without its pseudonym, complaint, symptoms, codes read at arrival, earlier repairs
// and the facts the shop declares. Not shown: ref, checks, notes, signs of earlier work, cause,
// correction and whatever came after, since they give the cause away.
// An exercise needs a known outcome, so that its cause is as good as proved: it stayed fixed, or
// came back for a stated reason that leaves the cause standing (part, workmanship, same cause,
// unrelated); and something to go by: a symptom present or a code.
// Pure functions, any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/ranking/question_counts.hpp"

namespace shoplore {

[[nodiscard]] Case as_it_came_in(const Case& record);

struct CheckAnswer {
  std::string verdict;  // pass, fail, unclear, mixed; empty: not recorded in this case
  std::string reading;  // "4.2 bar", "OL"; may be empty
};

struct PracticeCase {
  Case record;
  std::string cause;                  // key
  LeftOut stated;                     // for asking it as if it were new
  std::vector<EvidenceItem> arrival;  // what is shown, as a question of the ranking
};

// Nothing when the record is no exercise, or its cause is not among the counter's.
[[nodiscard]] std::optional<PracticeCase> practice_case(CaseId id, Case record,
                                                        const CauseTable& causes,
                                                        const Vocabulary& vocabulary);

// What the check answered in that case. `check`: a canonical id.
[[nodiscard]] CheckAnswer answer_of_check(const Case& record, std::string_view check,
                                          const Vocabulary& vocabulary);

}  // namespace shoplore
