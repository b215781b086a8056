// True rates of the invented world for counts that a warning makes: the chance that a case of a
// pattern records certain things at once, worked out from the generator's rates alone.
//
// Given pattern and recording all evidence is independent (corpus-demo/world.hpp), so each chance
// is a sum over recordings of products. Comebacks bring their failed fix as an earlier repair.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "corpus-demo/world.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore::testing {

// What a case has to record, all of it.
struct InRecord {
  std::string_view family;  // empty: any
  std::vector<std::string_view> symptoms, codes;
  bool asked = false;             // about earlier repairs
  std::optional<FixName> repair;  // done before; implies asked
  bool looked = false;            // for signs of earlier work
  std::string_view sign;          // seen; implies looked
};

// Of cases of that pattern; without the family's chance of being written down, the same for all.
[[nodiscard]] double chance(const World& world, const FailurePattern& pattern,
                            const InRecord& what);

// By pattern, times the pattern's share of all cases: add up and divide to get a true rate.
[[nodiscard]] std::vector<double> joint(const World& world, const InRecord& what);

// Chance that the check is done with a clear verdict and fails.
[[nodiscard]] double fail_chance(const World& world, const FailurePattern& pattern,
                                 const CheckHabit& check);

}  // namespace shoplore::testing
