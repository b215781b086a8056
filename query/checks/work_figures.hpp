// What work takes in this shop, out of its own cases: minutes of checks, hours and parts of
// repairs.
//
// Medians, because one bad day should not move them. Made when the ranking is fitted, since both
// read every case, and kept beside it: figures.json in the shop's folder, which can be thrown
// away. A part's price is turned into minutes by what an hour costs here, (cost_total - parts) /
// hours charged, so that a repair on suspicion can be weighed against looking further.
// Threads: any; a file is replaced whole. Errors: the store's; kNoPermission, kDamagedIndex.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "indexer/shop_folder.hpp"
#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct CheckFigures {
  double minutes = 0;      // median
  std::int64_t cases = 0;  // that wrote them down
};

struct RepairFigures {
  double minutes = 0;                 // clocked, median, without diagnosis
  double parts = 0;                   // their cost, median, in the currency of most cases
  std::vector<std::string> removals;  // the list most cases had, outermost first
  std::int64_t cases = 0;             // that wrote hours down
};

struct WorkFigures {
  std::map<std::string, CheckFigures, std::less<>> checks;    // by check id
  std::map<std::string, RepairFigures, std::less<>> repairs;  // by cause key
  std::optional<double> hour_costs;                           // median, in that currency
  std::string currency;

  // Median of the shop's own cases where enough wrote it down, else the vocabulary's, else
  // kUsualMinutes.
  [[nodiscard]] double check_minutes(std::string_view check, const Vocabulary& vocabulary) const;
};

// Fewer own cases than this and the vocabulary's minutes stand.
inline constexpr std::int64_t kFewestTimed = 5;
// Of a check nobody timed.
inline constexpr double kUsualMinutes = 15;

[[nodiscard]] Result<WorkFigures> work_figures(const Store& store, const Vocabulary& vocabulary);

// None yet: empty figures, and the vocabulary's stand.
[[nodiscard]] Result<WorkFigures> read_figures(const ShopFolder& folder);
[[nodiscard]] Result<void> keep_figures(const ShopFolder& folder, const WorkFigures& figures);

}  // namespace shoplore
