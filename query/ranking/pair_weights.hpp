// Which items of a question repeat one another: the weight of a pair, and the tree of pairs that
// a question's items form.
//
// For items f, g: n_cfg cases of cause c with both, K those where both attributes are known,
// a = (d_c,g|f + p_f)/(K + 1), b = (d_c,f|g + p_g)/(K + 1), t = (n_cfg + 3ab)/(K + 3), clipped so
// that they can be margins and joint of one table; I_c their mutual information;
//   W_fg = sum over c of (K/N) max(I_c, 0)
// the dependence that is left within causes (conditional mutual information; Chow & Liu 1968 build
// their tree of such weights, Friedman, Geiger & Goldszmidt 1997 within classes). The tree is a
// maximum spanning tree by Prim (1957) from the first item; of equal weights the lowest index wins.
// Threads: any number may ask. Errors: the counter's.
#pragma once

#include <mutex>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "query/case_counter.hpp"

namespace shoplore {

// Weights over all records, each worked out when first asked for and kept.
class PairWeights {
 public:
  explicit PairWeights(const CaseCounter& counter) : counter_(counter) {}
  [[nodiscard]] Result<double> weight(const EvidenceItem& first, const EvidenceItem& second) const;

 private:
  const CaseCounter& counter_;
  mutable std::mutex mutex_;
  mutable std::unordered_map<std::string, double> known_;
};

// W of one pair, counted now.
[[nodiscard]] Result<double> pair_weight(const EvidenceItem& first, const EvidenceItem& second,
                                         const Filter& filter, const CaseCounter& counter);

// Edges (already in the tree, joined by it) as positions in the items, in the order they join.
// Takes kept weights without a filter, else counts.
[[nodiscard]] Result<std::vector<std::pair<std::size_t, std::size_t>>> spanning_tree(
    const std::vector<EvidenceItem>& items, const Filter& filter, const CaseCounter& counter,
    const PairWeights& kept);

[[nodiscard]] bool is_open(const Filter& filter);

}  // namespace shoplore
