#include "query/ranking/attribute_counts.hpp"

#include <numeric>

namespace shoplore {
namespace {

Result<void> count_values(AttributeCounts& counts, const std::vector<std::string>& values,
                          const CaseCounter& counter) {
  auto known = counter.known_by_cause(counts.attribute, {});
  if (!known) return fail(known.error());
  counts.known = std::move(*known);
  for (const std::string& value : values) {
    auto with = counter.by_cause({{{counts.attribute, value}}, {}, {}});
    if (!with) return fail(with.error());
    counts.with.push_back(std::move(*with));
  }
  const auto possible = possible_values(counter, counts.attribute);
  if (!possible) return fail(possible.error());
  counts.values = *possible;
  return {};
}

}  // namespace

Result<std::vector<AttributeCounts>> attribute_counts(const CaseCounter& counter) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  std::vector<AttributeCounts> all;
  for (std::size_t i = 0; i < items->size();) {
    AttributeCounts counts;
    counts.attribute = (*items)[i].attribute;
    std::vector<std::string> values;
    for (; i < items->size() && (*items)[i].attribute == counts.attribute; ++i) {
      values.push_back((*items)[i].value);
    }
    if (is_hindsight(counts.attribute)) continue;
    if (auto done = count_values(counts, values, counter); !done) return fail(done.error());
    all.push_back(std::move(counts));
  }
  return all;
}

double sum_of_cases(const CasesByCause& cases) {
  return static_cast<double>(std::accumulate(cases.begin(), cases.end(), std::uint64_t{0}));
}

}  // namespace shoplore
