// The counted cases as rows of numbers: what mining reads, taken once from a counter.
//
// Items are what a pattern may be made of: symptoms, codes, check verdicts pass and fail, facts,
// signs of earlier work, earlier repairs, conditions and the mileage band; stored items only, so
// never a group's absence. Left out: what the vehicle is (a pattern's scope says that), verdicts
// unclear and mixed, what was said later of checks. An item in fewer than kFewestCases cases is
// left out too, but for a check's verdicts: no pattern could hold it.
// Outcomes are the main cause, one a case, and the signs of earlier work.
// Scopes are all vehicles, every make and every engine family with at least kFewestInScope cases.
// Cost: one list of cases an item and a known group. Immutable. Threads: any number may read.
// Errors: the counter's.
#pragma once

#include <string>
#include <vector>

#include "query/case_counter.hpp"
#include "query/patterns/set_counts.hpp"

namespace shoplore {

// A pattern recurs in at least so many cases.
inline constexpr std::uint32_t kFewestCases = 5;
inline constexpr std::uint32_t kFewestInScope = 20;

// The known group of a mention.
inline constexpr std::uint32_t kAlwaysKnown = UINT32_MAX;

// Which vehicles a pattern is about: an item of make or engine family; both empty: all.
using PatternScope = EvidenceItem;

struct ScopeRows {
  PatternScope scope;
  std::vector<std::uint32_t> rows;  // ascending
  std::vector<std::size_t> wider;   // numbers of the scopes before it that hold all of its rows
};

struct CaseRows {
  std::uint32_t cases = 0;
  std::vector<EvidenceItem> items;      // sorted, by number
  std::vector<std::uint32_t> group_of;  // by item: number of its known group, or kAlwaysKnown
  std::vector<std::string> signs;       // attributes "work_sign:<id>", by number
  NumberRows row_items, row_groups, row_cause, row_signs;
  std::vector<std::uint32_t> looked;  // rows in which signs were looked for
  std::vector<ScopeRows> scopes;      // all vehicles first, then makes, then engine families
  std::vector<std::uint32_t> make_known, family_known;  // rows in which it is written down

  [[nodiscard]] static Result<CaseRows> of(const CaseCounter& counter);
};

}  // namespace shoplore
