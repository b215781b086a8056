// Reading a fault code: what its five characters say by themselves, out of four choices.
//
// A classification is three parts: the letter's group, who gives the code its meaning, what it is
// about (fault_code.hpp, in our words; its tests hold the published examples). Written "powertrain;
// standard; fuel and air". A right part counts a third of the points, so a near miss is not
// nothing. Pure functions, any thread.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "indexer/fault_code.hpp"

namespace shoplore {

[[nodiscard]] std::string classification_of(const FaultCode& code);

// The right classification and three wrong ones, shuffled. Every wrong one is wrong in its own way.
[[nodiscard]] std::vector<std::string> classifications_offered(const FaultCode& code,
                                                               std::mt19937_64& random);

// 0 to 100: the share of parts that are right.
[[nodiscard]] double points_of_classification(std::string_view chosen, const FaultCode& code);

}  // namespace shoplore
