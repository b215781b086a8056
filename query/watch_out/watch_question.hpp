// What all kinds of warning are asked with, and the few words they share.
//
// Plain references: lives as long as what it refers to. Threads and errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "indexer/case_keys.hpp"
#include "query/answer.hpp"
#include "query/watch_out/watch_basis.hpp"

namespace shoplore {

struct WatchQuestion {
  const std::vector<EvidenceItem>& items;  // evidence of the question
  const std::vector<std::string>& known;   // groups and attributes it knows
  const std::vector<LikelyCause>& causes;  // rows shown, leading first, with their fixes
  const Filter& filter;
  const CaseCounter& counter;
  const Vocabulary& vocabulary;
  const WatchBasis& basis;  // of the same records
  const WorkFigures& figures;
};

// Causes less likely than this are warned of by no kind.
inline constexpr double kLikelyEnough = 0.1;

// The rows likely enough, each with its number.
struct LikelyRow {
  const LikelyCause& row;
  CauseNumber number = 0;
  [[nodiscard]] std::string key() const { return row.component + ":" + row.failure; }
};
[[nodiscard]] std::vector<LikelyRow> likely_rows(const WatchQuestion& question);

// Symptoms and codes the question has: what the customer came with.
[[nodiscard]] std::vector<EvidenceItem> complaint_of(const WatchQuestion& question);

// The narrowest vehicles the question names: its engine family, else its make, else none.
[[nodiscard]] std::vector<EvidenceItem> vehicle_of(const WatchQuestion& question);

// Whether the question states it.
[[nodiscard]] bool states(const WatchQuestion& question, const EvidenceItem& item);

// Ids of the cases behind a count, the last recorded first, kCasesBehind at most: those of `cause`,
// or of all causes where `cause` is nothing.
[[nodiscard]] Result<std::vector<CaseId>> cases_behind(const CountQuestion& counted,
                                                       std::optional<CauseNumber> cause,
                                                       const CaseCounter& counter);

// "90 %: 42 to 80 %": the interval as said beside counts.
[[nodiscard]] std::string interval_text(const Share& share);

}  // namespace shoplore
