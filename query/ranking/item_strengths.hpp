// How much an attribute tells about the cause at all, as a weight around 1 for its items.
//
// For attribute f with values v, causes c, background p and rates theta with m = 2:
//   U_f = sum over v, c of (n_c/N) theta_cv ln(theta_cv/p_v) / (- sum over v of p_v ln p_v),
//   clipped to [0, 1]: the share of the attribute's own uncertainty that the cause explains
//   (mutual information over entropy; Shannon 1948). w_f = U_f^(1/4) / their mean over all items;
//   a mention is an attribute with the values "there" and "not there".
// The power and the mean came out of trials on open diagnosis data; they are no published rule.
// A plain value once made.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "query/ranking/attribute_counts.hpp"

namespace shoplore {

// Backgrounds of an attribute's items: (N_f + 1/2) / (D_f + V_f/2), of a mention
// (N_f + 1/2) / (N + 1), which is the same with two values and known everywhere.
[[nodiscard]] double background_rate(double with, double known, double values);

class ItemStrengths {
 public:
  // Weighs every attribute alike.
  ItemStrengths() = default;
  // Of every attribute of the records, so that the mean is over all items. `seen`: cases by cause.
  ItemStrengths(const std::vector<AttributeCounts>& attributes, const CasesByCause& seen);

  // w_f; of an attribute the records do not hold, as if it told as much as the mean.
  [[nodiscard]] double weight(std::string_view attribute) const;

 private:
  std::map<std::string, double, std::less<>> weights_;
};

}  // namespace shoplore
