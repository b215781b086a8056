// Entity tags and what requests demand of them (RFC 9110 sections 8.8.3 and 13.1).
//
// Pure functions, any thread.
#pragma once

#include <string>
#include <string_view>

#include "indexer/quantities.hpp"

namespace shoplore {

// The tag of a case at a revision: "2412" in quotes.
[[nodiscard]] std::string entity_tag(Revision revision);

// If-Match compares strongly (a weak tag never matches), If-None-Match weakly.
enum class TagComparison { kStrong, kWeak };

// Whether a list of tags names this one; "*" names every tag. A malformed list names none.
[[nodiscard]] bool names_tag(std::string_view list, std::string_view tag, TagComparison comparison);

}  // namespace shoplore
