// Fits the ranking of a shop, works out what work takes there, and keeps both.
//
// Threads: one; others may ask the snapshot meanwhile. Errors: the store's, and keep_knobs'.
#pragma once

#include <cstdint>

#include "query/ranking/kept_knobs.hpp"
#include "query/ranking/knob_fit.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

// With too few cases no knobs are kept and the questions are 0.
[[nodiscard]] Result<KeptKnobs> fit_in_shop(const ShopFolder& folder, const Snapshot& snapshot,
                                            const Store& store, const Vocabulary& vocabulary,
                                            std::uint64_t seed);

enum class FitDone { kNotDue, kFitted };

// The same with seed 1, when enough cases came in since the last fit (is_fit_due).
[[nodiscard]] Result<FitDone> fit_when_due(const ShopFolder& folder, const Snapshot& snapshot,
                                           const Store& store, const Vocabulary& vocabulary);

}  // namespace shoplore
