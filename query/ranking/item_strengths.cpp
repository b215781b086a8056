#include "query/ranking/item_strengths.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shoplore {
namespace {

constexpr double kSmoothing = 2;  // m of the rates here

using Counts = std::vector<std::uint32_t>;

double total(const Counts& counts) {
  return static_cast<double>(std::accumulate(counts.begin(), counts.end(), std::uint64_t{0}));
}

// What the records hold of one attribute.
struct AttributeCounts {
  std::vector<Counts> with;  // by value
  Counts known;
  double values = 2;
};

// The values of an attribute, a group's and a mention's "absent" included: known minus present.
Result<AttributeCounts> counts_of(const std::string& attribute,
                                  const std::vector<std::string>& values,
                                  const CaseCounter& counter) {
  AttributeCounts out;
  auto known = counter.known_by_cause(attribute, {});
  if (!known) return fail(known.error());
  out.known = std::move(*known);
  for (const std::string& value : values) {
    auto with = counter.by_cause({{{attribute, value}}, {}, {}});
    if (!with) return fail(with.error());
    out.with.push_back(std::move(*with));
  }
  if (known_by(attribute) != KnownBy::kItself) {
    Counts rest = out.known;
    for (std::size_t c = 0; c < rest.size(); ++c) rest[c] -= out.with.front()[c];
    out.with.push_back(std::move(rest));
  }
  const auto possible = possible_values(counter, attribute);
  if (!possible) return fail(possible.error());
  out.values = *possible;
  return out;
}

// U_f of the header.
double usefulness(const AttributeCounts& counts, const Counts& seen) {
  const double cases = total(seen), known = total(counts.known);
  double information = 0, entropy = 0;
  for (const Counts& with : counts.with) {
    const double p = background_rate(total(with), known, counts.values);
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

Result<ItemStrengths> ItemStrengths::of(const CaseCounter& counter) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  const auto seen = counter.by_cause({});
  if (!seen) return fail(seen.error());
  ItemStrengths out;
  double sum = 0, count = 0;
  for (std::size_t i = 0; i < items->size();) {
    const std::string& attribute = (*items)[i].attribute;
    std::vector<std::string> values;
    for (; i < items->size() && (*items)[i].attribute == attribute; ++i) {
      values.push_back((*items)[i].value);
    }
    if (is_hindsight(attribute)) continue;
    const auto counts = counts_of(attribute, values, counter);
    if (!counts) return fail(counts.error());
    const double weight = std::pow(usefulness(*counts, *seen), 0.25);
    const auto of_items = static_cast<double>(counts->with.size());
    out.weights_.emplace(attribute, weight);
    sum += weight * of_items;
    count += of_items;
  }
  if (sum <= 0) return out;
  for (auto& [attribute, weight] : out.weights_) weight /= sum / count;
  return out;
}

double ItemStrengths::weight(std::string_view attribute) const {
  const auto found = weights_.find(attribute);
  return found == weights_.end() ? 1 : found->second;
}

}  // namespace shoplore
