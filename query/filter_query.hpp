// A Filter as a Xapian query, once, for the index counter and full-text search alike.
//
// Pure, any thread.
#pragma once

#include <xapian.h>

#include <string>

#include "query/case_counter.hpp"

namespace shoplore {

// Matches the documents the filter lets through; everything for an empty filter. Weightless.
[[nodiscard]] Xapian::Query filter_query(const Filter& filter);

// The item that a filter's name stands for: attribute = name in lower case.
[[nodiscard]] EvidenceItem name_item(std::string attribute, const std::string& name);

}  // namespace shoplore
