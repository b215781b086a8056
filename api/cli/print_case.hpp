// A case record and its history as text for a person. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "indexer/records.hpp"

namespace shoplore {

// Everything the record states; the vehicle's token is only said to be there.
[[nodiscard]] std::string print_case(const StoredCase& stored, const Vocabulary& vocabulary,
                                     const Page& page);

// Vehicle, complaint and findings of a case that is shown as it came in.
[[nodiscard]] std::string print_as_it_came_in(const Case& record, const Vocabulary& vocabulary,
                                              const Page& page);

// One line a change: revision, when, by which role, which fields. Oldest first.
[[nodiscard]] std::string print_history(const std::vector<Change>& history, const Page& page);

}  // namespace shoplore
