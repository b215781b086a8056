// The fitted knobs as a shop keeps them: ranking.json in its folder, beside the records, with the
// revision they were fitted at. Can always be thrown away: the start values stand in.
//
// Threads: any; a file is replaced whole. Errors: kNoPermission when it cannot be written; a file
// that is not as expected is kDamagedIndex, and fitting again mends it.
#pragma once

#include <optional>

#include "indexer/quantities.hpp"
#include "indexer/shop_folder.hpp"
#include "query/ranking/likely_causes.hpp"

namespace shoplore {

// Fewer closed cases than this and the start values stand.
inline constexpr std::size_t kFewestCasesToFit = 200;

struct KeptKnobs {
  RankingKnobs knobs;
  Revision revision;           // of the records they were fitted on
  std::int64_t cases = 0;      // closed ones then
  std::int64_t questions = 0;  // asked for the fit
  double log_loss = 0, start_log_loss = 0;
};

// Nothing when the shop has not fitted yet.
[[nodiscard]] Result<std::optional<KeptKnobs>> read_knobs(const ShopFolder& folder);
[[nodiscard]] Result<void> keep_knobs(const ShopFolder& folder, const KeptKnobs& kept);

// Whether it is time to fit: enough cases, and a tenth more of them than at the last fit.
[[nodiscard]] bool is_fit_due(const std::optional<KeptKnobs>& kept, std::int64_t cases);

}  // namespace shoplore
