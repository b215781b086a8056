// A recurring pattern in words of the records: which vehicles, which findings, and what it turned
// out to be, with its counts; and the cases it rests on.
//
// Counts are evidence, not a diagnosis: a pattern says what went together here, not what makes
// what. Plain values. Threads and errors: the counter's and the
// store's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/store.hpp"
#include "query/patterns/association.hpp"
#include "query/patterns/pattern_tests.hpp"

namespace shoplore {

struct Pattern {
  PatternKind kind = PatternKind::kCause;
  PatternScope scope;               // empty: all vehicles
  std::vector<EvidenceItem> items;  // what goes before; none when the scope says it all
  std::string cause;                // cause key; of kCause and kPassed
  std::string sign;                 // attribute; of kWorkSign
  // The outcome among the cases with scope and items. Of kPassed the other way round: passes among
  // the cases of the cause in which the check gave a clear verdict.
  Share share;
  DiagnosticTable table;                   // behind it; of kInVain and kPassed see limit_tests.hpp
  std::optional<Association> association;  // none of kInVain and kPassed: they have no rest
  double p = 1, q = 1;                     // one-sided; of its kind (pattern_book.hpp)
  double holm = 1;                         // p adjusted so that none at all is chance
};

// A pattern with what it rests on, for showing.
struct OpenedPattern {
  Pattern pattern;
  std::vector<std::string> refs;  // of the cases counted in share.count, in the order of their ids
  std::uint32_t vehicles = 0;     // distinct among them; a case without a token is its own
};

// Reads refs and vehicles from the store; each case once, however many patterns rest on it.
[[nodiscard]] Result<std::vector<OpenedPattern>> opened(const std::vector<Pattern>& patterns,
                                                        const CaseCounter& counter,
                                                        const Store& store);

// The cases counted in share.count, by id. Requires: a pattern of these records.
[[nodiscard]] Result<std::vector<CaseId>> cases_of(const Pattern& pattern,
                                                   const CaseCounter& counter);

}  // namespace shoplore
