#include "query/ranking/item_strengths.hpp"

#include <algorithm>
#include <cmath>

namespace shoplore {
namespace {

constexpr double kSmoothing = 2;  // m of the rates here

// A group's and a mention's "absent", known minus present, is a value too.
std::vector<CasesByCause> values_of(const AttributeCounts& counts) {
  std::vector<CasesByCause> with = counts.with;
  if (known_by(counts.attribute) == KnownBy::kItself) return with;
  CasesByCause rest = counts.known;
  for (std::size_t c = 0; c < rest.size(); ++c) rest[c] -= with.front()[c];
  with.push_back(std::move(rest));
  return with;
}

// U_f of the header.
double usefulness(const AttributeCounts& counts, const CasesByCause& seen) {
  const double cases = sum_of_cases(seen), known = sum_of_cases(counts.known);
  double information = 0, entropy = 0;
  for (const CasesByCause& with : values_of(counts)) {
    const double p = background_rate(sum_of_cases(with), known, counts.values);
    entropy -= p * std::log(p);
    for (std::size_t c = 0; c < seen.size(); ++c) {
      if (seen[c] == 0) continue;
      const double rate = (with[c] + kSmoothing * p) / (counts.known[c] + kSmoothing);
      information += seen[c] / cases * rate * std::log(rate / p);
    }
  }
  return entropy > 0 ? std::clamp(information / entropy, 0.0, 1.0) : 0;
}

}  // namespace

double background_rate(double with, double known, double values) {
  return (with + 0.5) / (known + values / 2);
}

ItemStrengths::ItemStrengths(const std::vector<AttributeCounts>& attributes,
                             const CasesByCause& seen) {
  double sum = 0, items = 0;
  for (const AttributeCounts& counts : attributes) {
    const double weight = std::pow(usefulness(counts, seen), 0.25);
    const auto of_items = static_cast<double>(values_of(counts).size());
    weights_.emplace(counts.attribute, weight);
    sum += weight * of_items;
    items += of_items;
  }
  if (sum <= 0) {
    weights_.clear();
    return;
  }
  for (auto& [attribute, weight] : weights_) weight /= sum / items;
}

double ItemStrengths::weight(std::string_view attribute) const {
  const auto found = weights_.find(attribute);
  return found == weights_.end() ? 1 : found->second;
}

}  // namespace shoplore
