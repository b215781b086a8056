// What a case must keep towards the case it follows: rules that need both records.
//
// Rules a record breaks alone are in case_rules.hpp. Every single way in (add, change, closing,
// outcomes) looks here when a link is new or changes; an import does not, since its lines may come
// in any order and a comeback before what it follows, nor does a change of the earlier case.
// Threads, other errors: the store's.
#pragma once

#include "indexer/case_record.hpp"
#include "indexer/result.hpp"
#include "indexer/store.hpp"

namespace shoplore {

// kInvalidInput with every rule the record breaks; success when it follows nothing. The rules:
// - the case it follows is on record, is closed, and does not itself follow this one;
// - both are of one vehicle, where both tokens are known;
// - it was not opened before the earlier work was done;
// - the odometer does not stand lower than at the earlier repair.
[[nodiscard]] Result<void> check_link(const Case& record, const Store& store);

// Whether a change touches what check_link looks at.
[[nodiscard]] bool is_link_changed(const Case& before, const Case& after);

}  // namespace shoplore
