#include "query/ranking/findings_held.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "indexer/evidence_item.hpp"

namespace shoplore {
namespace {

constexpr double kPull = 2;  // cases by which a cause's mean is drawn to that of all

double sum_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

}  // namespace

bool is_finding(std::string_view attribute) {
  const bool is_of_vehicle = id_of_attribute(attribute).empty();
  return !is_of_vehicle && kind_of_attribute(attribute) != "word" && !is_hindsight(attribute);
}

FindingsHeld::FindingsHeld(const std::vector<AttributeCounts>& attributes, const CasesByCause& seen)
    : findings_(seen.size()), cases_(seen.begin(), seen.end()) {
  for (const AttributeCounts& counts : attributes) {
    if (!is_finding(counts.attribute)) continue;
    for (const CasesByCause& with : counts.with) {
      for (std::size_t c = 0; c < with.size(); ++c) findings_[c] += with[c];
    }
  }
  const double cases = sum_of(cases_);
  mean_ = cases > 0 ? sum_of(findings_) / cases : 0;
}

std::vector<double> FindingsHeld::scarcity(std::size_t causes, const HeldByCase* left_out) const {
  std::vector<double> scarcity(causes);
  if (mean_ <= 0) return scarcity;
  for (CauseNumber c = 0; c < std::min(causes, cases_.size()); ++c) {
    double findings = findings_[c], cases = cases_[c];
    if (left_out != nullptr && left_out->cause == c) {
      // It may have been changed since it was counted.
      findings = std::max(0.0, findings - left_out->findings);
      cases = std::max(0.0, cases - 1);
    }
    scarcity[c] = std::log(mean_ * (cases + kPull) / (findings + kPull * mean_));
  }
  return scarcity;
}

}  // namespace shoplore
