// Every set of up to three items against every outcome, scope by scope: which go together more
// often than chance would have it, and how many were tried.
//
// The table of a set and an outcome holds the cases of the scope in which every attribute of the
// set is known, and of a sign of earlier work only those in which signs were looked for. Unknown is
// not absent: a case in which nobody looked is in none of the four cells. So both rows of the table
// had the same looked at, and a check that is done only on suspicion is not compared with cases
// that never gave cause for it.
//   with the set: all of it holds. Rest: all of it is known and not all of it holds.
// An engine family or a make by itself is a set of no items: its rest are the other cases whose
// family or make is written down.
// What is not there makes no case alike: an absence or a pass stands only beside a finding that is
// there, and a mileage band likewise or by itself.
// The family of tests: every such set and outcome whose margins reach the least count of the scope
// (with the set and with the outcome, both within the table) and that has a rest. That looks at
// margins only, which Fisher's test holds fixed, never at how often the two met: so what is then
// left out for meeting too seldom was tested all the same, and counts as p = 1. Pure functions, any
// thread; they cannot fail.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "query/checks/diagnostic_table.hpp"
#include "query/patterns/case_rows.hpp"
#include "query/patterns/exact_tests.hpp"

namespace shoplore {

enum class PatternKind {
  kCause,     // findings -> main cause
  kWorkSign,  // findings -> sign of earlier work
  kInVain,    // an earlier repair -> the cause was not on that part
  kPassed     // a check passed -> the cause was on a part it tells about all the same
};

template <>
inline constexpr EnumTable<PatternKind, 4> kEnumNames<PatternKind>{
    {{PatternKind::kCause, "cause"},
     {PatternKind::kWorkSign, "work_sign"},
     {PatternKind::kInVain, "in_vain"},
     {PatternKind::kPassed, "passed_all_the_same"}}};

inline constexpr std::uint32_t kNoItem = UINT32_MAX;

// Numbers are those of CaseRows; unused places of `items` are kNoItem, at the end.
struct TestedPattern {
  PatternKind kind = PatternKind::kCause;
  std::uint32_t scope = 0, outcome = 0;
  std::array<std::uint32_t, kMaxSetSize> items{kNoItem, kNoItem, kNoItem};
  DiagnosticTable table;  // positive: the set holds; condition: the outcome
  double p = 1;
};

struct PatternTests {
  std::uint64_t tested = 0;
  std::vector<TestedPattern> met;  // those that met often enough, and more often than by chance
};

// Least cases of a set, of an outcome and of both together in a scope: one in 500, at least
// kFewestCases. A set that one case in a thousand shows is rare even in a large shop.
[[nodiscard]] std::uint32_t fewest_in(std::size_t cases_in_scope);

[[nodiscard]] PatternTests tests_of_causes(const CaseRows& rows, const ExactTests& exact);
[[nodiscard]] PatternTests tests_of_signs(const CaseRows& rows, const ExactTests& exact);

}  // namespace shoplore
