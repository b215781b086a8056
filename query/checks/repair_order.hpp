// In which order to try repairs when nobody looks any further, and what that is expected to cost.
//
// One of the actions cures, each with its probability; they are tried until one does. Without
// removals falling p/c is cheapest (Kadane & Simon, Theory and Decision 8, 1977). Removals have to
// be opened once, before the first action behind them, and need not be closed in between. Where
// they form a tree (what lies behind one lies behind all before it in the list) the order is made
// bottom-up: whatever promises more per minute than what must come before it is joined to that
// (Horn, SIAM J. Appl. Math. 23, 1972, for jobs under an out-tree; the same as Ottosen & Jensen,
// arXiv 1203.3502, for nested clusters of repairs), which is optimal. Where lists cross, an order
// is still made and its cost is exact, but a cheaper one may exist.
// Pure functions, any thread. Probabilities are shares that add to 1 at most; costs are minutes.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace shoplore {

struct RepairAction {
  double probability = 0;             // that this one cures
  double minutes = 0;                 // of its own, above 0; parts counted in
  std::vector<std::string> removals;  // outermost first
  double minutes_if_cured = 0;        // spent besides when this was the one; moves no order
};

// Minutes to take each removal off, by id; one that is not listed costs nothing.
using RemovalMinutes = std::map<std::string, double, std::less<>>;

struct RepairOrder {
  std::vector<std::size_t> order;  // positions of the actions
  double expected_minutes = 0;     // until one cures, or until all are done
};

// `open` are removals that are off already.
[[nodiscard]] RepairOrder best_repair_order(const std::vector<RepairAction>& actions,
                                            const RemovalMinutes& removal_minutes,
                                            const std::set<std::string>& open);

// Sum over the order of (own minutes + removals not open yet) x P(none before it cured)
// + probability x minutes_if_cured.
[[nodiscard]] double expected_minutes(const std::vector<std::size_t>& order,
                                      const std::vector<RepairAction>& actions,
                                      const RemovalMinutes& removal_minutes,
                                      const std::set<std::string>& open);

// One place where the fault may be, and a look there that finds it, if it is there, with a chance
// below 1.
struct Look {
  double probability = 0;  // that it is there
  double found = 1;        // the chance of finding it by one look
  double minutes = 1;      // above 0
};

// Where to look, look by look, the same place again once it is worth it: always where
// P (1 - found)^(looks so far) found / minutes is greatest (Blackwell's rule; Chew, Ann. Math.
// Statist. 38, 1967), the lowest position on a tie.
[[nodiscard]] std::vector<std::size_t> search_sequence(const std::vector<Look>& places,
                                                       std::size_t looks);

}  // namespace shoplore
