// Whether a vehicle may have an electric drive although nobody said so: what the records hold of
// its engine family, or else of its model.
//
// For cautions only. One such case is enough: a caution too many costs a look, one too few a life.
// Threads and errors: the counter's.
#pragma once

#include <optional>
#include <vector>

#include "query/case_counter.hpp"

namespace shoplore {

// kElectric or kHybrid, the one of most cases; nothing where the fuel is stated, or where neither
// family nor model is, or no case of them is either.
[[nodiscard]] Result<std::optional<Fuel>> electric_drive_of(const std::vector<EvidenceItem>& stated,
                                                            const CaseCounter& counter);

}  // namespace shoplore
