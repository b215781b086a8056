// A filter as parameters of a path: make, engine_family, mileage_km_low, mileage_km_high,
// model_year_low, model_year_high, closed_since, proof. Any thread.
#pragma once

#include "api/http/query_string.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

// What is wrong with a value, the reader tells at the end (QueryReader::finish).
[[nodiscard]] Filter filter_of(QueryReader& query);

// kInvalidInput where a band could hold nothing.
[[nodiscard]] Result<void> check_filter(const Filter& filter);

}  // namespace shoplore
