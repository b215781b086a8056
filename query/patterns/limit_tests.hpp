// What goes wrong more often than a workshop should put up with: earlier repairs in vain, and
// checks that pass all the same.
//
// Neither is a matter of "more often than in the rest": an earlier repair is in vain almost
// everywhere it was not the part, and a pass always speaks against a cause more than a fail. So
// each share is held against a stated limit, by the exact binomial, one-sided. Scope by scope.
// - in vain: of the cases with that earlier repair, those whose main cause was on another part;
//   limit kInVainLimit, "more often than not". Vehicles it cured never came: this says what to
//   think of a repair that did not help, not how often it helps.
// - passed all the same: of the cases of one cause in which a check that tells about its part gave
//   a clear verdict, those in which it passed; limit kPassedLimit, "more than one time in ten".
// The family of tests: every such share of at least the least count of the scope.
// In the table of what is returned, test and condition stand for nothing: true_positive are those
// that went wrong, false_positive those that did not.
// Pure functions, any thread; they cannot fail.
#pragma once

#include "indexer/vocabulary.hpp"
#include "query/patterns/pattern_tests.hpp"

namespace shoplore {

inline constexpr double kInVainLimit = 0.5, kPassedLimit = 0.1;

[[nodiscard]] PatternTests tests_of_repairs(const CaseRows& rows, const CauseTable& causes,
                                            const ExactTests& exact);
[[nodiscard]] PatternTests tests_of_passes(const CaseRows& rows, const CauseTable& causes,
                                           const Vocabulary& vocabulary, const ExactTests& exact);

// The component an earlier repair was done on, of its attribute.
[[nodiscard]] std::string repaired_part(std::string_view attribute);

}  // namespace shoplore
