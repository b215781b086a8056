// How often a failure came month by month, and how often was usual: a bar chart.
//
// Pure function, any thread.
#pragma once

#include "api/wire/plot.hpp"
#include "indexer/vocabulary.hpp"
#include "query/lately/lately.hpp"

namespace shoplore {

// Of the row's drawn months, which end with `last`.
[[nodiscard]] Plot lately_plot(const LatelyRow& row, std::chrono::year_month last,
                               const Vocabulary& vocabulary);

// "wastegate linkage, seized open, engine family BW16D".
[[nodiscard]] std::string display_failure(const CauseParts& cause, const std::string& engine_family,
                                          const Vocabulary& vocabulary);

}  // namespace shoplore
