// Which fixes recur for a cause, and how many of them lasted.
//
// Counts only; Kaplan-Meier shares belong elsewhere. Pure, any thread.
#pragma once

#include <string>
#include <vector>

#include "query/answer.hpp"

namespace shoplore {

// Fixes one by one: a case with several counts once under each. Most cases first, then by key.
[[nodiscard]] std::vector<FixCount> single_fixes(const std::vector<ProfileCount>& profiles,
                                                 const std::string& cause_key);

// What was done together: each case counts once. Most cases first, then by keys.
[[nodiscard]] std::vector<FixCount> fixes_together(const std::vector<ProfileCount>& profiles,
                                                   const std::string& cause_key);

// Share with its 90 % Jeffreys interval.
[[nodiscard]] Share share_of(std::uint32_t count, std::uint32_t out_of);

}  // namespace shoplore
