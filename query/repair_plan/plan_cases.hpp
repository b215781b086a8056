// The closed cases of one cause, whole: what a repair plan is made of.
//
// Counters know a case's fixes and outcome; hours, parts, removals, traps and verification stand
// only in its body, so the bodies are read here once and everything about the work is counted from
// them. Judges nothing.
// Plain values; ids are canonical. Threads, errors: the counter's and the store's.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

struct PlanCase {
  std::string ref;
  std::string make, engine_family;  // in lower case; may be empty
  std::vector<std::string> fixes;   // fix keys, sorted, each once; may be empty
  Case record;
};

// Fewer cases than this and nothing is summed up: they are listed, or a wider circle is taken.
inline constexpr std::uint32_t kFewestToPlan = 5;

// Every counted case whose main cause this is, as of that revision, in the order recorded; empty
// for a cause never seen.
[[nodiscard]] Result<std::vector<PlanCase>> plan_cases(const CaseCounter& counter,
                                                       const Store& store, Revision as_of,
                                                       const Vocabulary& vocabulary,
                                                       std::string_view cause_key);

// Those in which exactly these fixes were done together.
[[nodiscard]] std::vector<const PlanCase*> with_fixes(std::span<const PlanCase> cases,
                                                      const std::vector<std::string>& fixes);

// Distinct vehicles; a case without a token is its own.
[[nodiscard]] std::uint32_t vehicles_among(std::span<const PlanCase> cases);

}  // namespace shoplore
