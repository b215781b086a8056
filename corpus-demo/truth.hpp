// What the generator knows and a workshop never does: the exact probability of each pattern given
// what a case records, and the files tests read.
//
// Uses only the recorded evidence of a case, never its texts, its cause, its outcome or `follows`.
// Exact under the model of world.hpp, except that comebacks cut off by the first and last days
// are counted as if there were none. Pure functions, any thread.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "corpus-demo/world.hpp"
#include "indexer/case_record.hpp"

namespace shoplore {

// By pattern number; adds to 1. Evidence the world does not know is ignored: an unknown make
// counts as none written down. Evidence that no pattern allows leaves the patterns by prior.
[[nodiscard]] std::vector<double> true_posterior(const World& world, const Case& record);

// Number of the most probable pattern; the lowest on a tie.
[[nodiscard]] std::size_t best_guess(const World& world, const Case& record);

// The pattern of the recorded main cause; nothing for a record without one or of another world.
[[nodiscard]] std::optional<std::size_t> pattern_of(const World& world, const Case& record);

// {"ref":"demo-000001","pattern":"ignition_coil_internal_fault"}
[[nodiscard]] std::string truth_line(const World& world, const std::string& ref,
                                     std::size_t pattern);

// Every pattern with its true rates, one JSON object a line.
[[nodiscard]] std::string rates_lines(const World& world);

}  // namespace shoplore
