#include "query/ranking/pair_weights.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "query/ranking/attribute_counts.hpp"
#include "query/ranking/item_strengths.hpp"

namespace shoplore {
namespace {

constexpr double kJointPull = 3, kMarginPull = 1;  // cases the independent table counts for

// Mutual information of two indicators with these margins and joint, in nats.
double information(double a, double b, double t) {
  const auto part = [](double joint, double product) {
    return joint <= 0 ? 0 : joint * std::log(joint / product);
  };
  return part(t, a * b) + part(a - t, a * (1 - b)) + part(b - t, (1 - a) * b) +
         part(1 - a - b + t, (1 - a) * (1 - b));
}

struct Background {
  double first = 0, second = 0;
};

struct PairCounts {
  CasesByCause both, first, second, known;  // first and second where both are known
};

double weight_of(const PairCounts& counts, const Background& p, double cases) {
  double weight = 0;
  for (std::size_t c = 0; c < counts.both.size(); ++c) {
    const double known = counts.known[c];
    if (known == 0) continue;
    const double a =
        std::min((counts.first[c] + kMarginPull * p.first) / (known + kMarginPull), .999999);
    const double b =
        std::min((counts.second[c] + kMarginPull * p.second) / (known + kMarginPull), .999999);
    double t = (counts.both[c] + kJointPull * a * b) / (known + kJointPull);
    t = std::min(t, .99999 * std::min(a, b));
    t = std::max(t, std::max(1e-9, a + b - 1 + 1e-9));
    weight += known / cases * std::max(information(a, b, t), 0.0);
  }
  return weight;
}

Result<double> background_of(const EvidenceItem& item, const Filter& filter,
                             const CaseCounter& counter) {
  const auto with = counter.by_cause({{item}, filter, {}});
  if (!with) return fail(with.error());
  const auto known = counter.known_by_cause(item.attribute, filter);
  if (!known) return fail(known.error());
  const auto values = possible_values(counter, item.attribute);
  if (!values) return fail(values.error());
  return background_rate(sum_of_cases(*with), sum_of_cases(*known), *values);
}

std::string text_of(const EvidenceItem& item) {
  return item.attribute + "=" + item.value;
}

}  // namespace

Result<double> pair_weight(const EvidenceItem& first, const EvidenceItem& second,
                           const Filter& filter, const CaseCounter& counter) {
  PairCounts counts;
  const auto take = [&](CasesByCause& into, std::vector<EvidenceItem> all_of,
                        std::vector<std::string> known) -> Result<void> {
    auto counted = counter.by_cause({std::move(all_of), filter, std::move(known)});
    if (!counted) return fail(counted.error());
    into = std::move(*counted);
    return {};
  };
  const std::string &f = first.attribute, &g = second.attribute;
  if (auto done = take(counts.both, {first, second}, {}); !done) return fail(done.error());
  if (auto done = take(counts.first, {first}, {g}); !done) return fail(done.error());
  if (auto done = take(counts.second, {second}, {f}); !done) return fail(done.error());
  if (auto done = take(counts.known, {}, {f, g}); !done) return fail(done.error());
  CasesByCause all;
  if (auto done = take(all, {}, {}); !done) return fail(done.error());
  const auto p = background_of(first, filter, counter), q = background_of(second, filter, counter);
  if (!p) return fail(p.error());
  if (!q) return fail(q.error());
  return weight_of(counts, {*p, *q}, sum_of_cases(all));
}

Result<double> PairWeights::weight(const EvidenceItem& first, const EvidenceItem& second) const {
  const bool in_order = first < second;
  const std::string key =
      text_of(in_order ? first : second) + "|" + text_of(in_order ? second : first);
  {
    const std::lock_guard lock(mutex_);
    if (const auto found = known_.find(key); found != known_.end()) return found->second;
  }
  auto weight = pair_weight(first, second, {}, counter_);
  if (!weight) return fail(weight.error());
  const std::lock_guard lock(mutex_);
  known_.emplace(key, *weight);
  return *weight;
}

bool is_open(const Filter& filter) {
  return filter.make.empty() && filter.engine_family.empty() && filter.mileage.is_open() &&
         filter.model_year.is_open() && !filter.closed_since && filter.proofs.empty();
}

Result<std::vector<std::pair<std::size_t, std::size_t>>> spanning_tree(
    const std::vector<EvidenceItem>& items, const Filter& filter, const CaseCounter& counter,
    const PairWeights& kept) {
  std::vector<std::pair<std::size_t, std::size_t>> edges;
  if (items.size() < 2) return edges;
  std::vector<double> best(items.size(), -std::numeric_limits<double>::infinity());
  std::vector<std::size_t> from(items.size(), 0);
  std::vector<char> joined(items.size(), 0);
  std::size_t newest = 0;
  joined[0] = 1;
  while (edges.size() + 1 < items.size()) {
    std::size_t next = items.size();
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (joined[i] != 0) continue;
      const auto weight = is_open(filter) ? kept.weight(items[newest], items[i])
                                          : pair_weight(items[newest], items[i], filter, counter);
      if (!weight) return fail(weight.error());
      if (*weight > best[i]) {
        best[i] = *weight;
        from[i] = newest;
      }
      if (next == items.size() || best[i] > best[next]) next = i;
    }
    joined[next] = 1;
    edges.emplace_back(from[next], next);
    newest = next;
  }
  return edges;
}

}  // namespace shoplore
