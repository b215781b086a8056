#include "query/ranking/question_counts.hpp"

#include <algorithm>
#include <numeric>

namespace shoplore {
namespace {

bool holds(const LeftOut& left_out, const EvidenceItem& item) {
  const bool by_group = known_by(item.attribute) == KnownBy::kGroup && item.value == "absent";
  const EvidenceItem stored{item.attribute, by_group ? "present" : item.value};
  const bool there =
      std::find(left_out.items.begin(), left_out.items.end(), stored) != left_out.items.end();
  if (!by_group) return there;
  const bool known = std::find(left_out.known.begin(), left_out.known.end(),
                               known_group(item.attribute)) != left_out.known.end();
  return known && !there;
}

bool knows(const LeftOut& left_out, std::string_view attribute) {
  if (known_by(attribute) == KnownBy::kMention) return true;
  return std::find(left_out.known.begin(), left_out.known.end(), known_group(attribute)) !=
         left_out.known.end();
}

// Nothing where the question knows of no finding, only of the vehicle.
std::vector<double> scarcity_of(const std::vector<EvidenceItem>& asked,
                                const FindingsHeld& findings, std::size_t causes,
                                const std::optional<LeftOut>& left_out) {
  const auto findings_in = [](const std::vector<EvidenceItem>& items) {
    return std::count_if(items.begin(), items.end(),
                         [](const auto& item) { return is_finding(item.attribute); });
  };
  if (findings_in(asked) == 0) return std::vector<double>(causes);
  if (!left_out) return findings.scarcity(causes, nullptr);
  const HeldByCase own{left_out->cause, static_cast<double>(findings_in(left_out->items))};
  return findings.scarcity(causes, &own);
}

double total(const CauseCounts& counts) {
  return std::accumulate(counts.begin(), counts.end(), 0.0);
}

class Counting {
 public:
  Counting(const Filter& filter, const RankingBasis& basis, const std::optional<LeftOut>& left_out)
      : filter_(filter), basis_(basis), left_out_(left_out) {}

  Result<CauseCounts> by_cause(const std::vector<EvidenceItem>& all_of,
                               const std::vector<std::string>& known = {}) const {
    const auto counts = basis_.counter.by_cause({all_of, filter_, known});
    if (!counts) return fail(counts.error());
    return CauseCounts(counts->begin(), counts->end());
  }

  // The left-out case goes where all of it holds in it. It may have been changed since it was
  // counted: no count falls below 0.
  void leave_out(CauseCounts& counts, const std::vector<EvidenceItem>& all_of,
                 const std::vector<std::string>& known = {}) const {
    if (!left_out_) return;
    const bool is_counted =
        std::all_of(all_of.begin(), all_of.end(),
                    [&](const EvidenceItem& item) { return holds(*left_out_, item); }) &&
        std::all_of(known.begin(), known.end(),
                    [&](const std::string& attribute) { return knows(*left_out_, attribute); });
    double& count = counts[left_out_->cause];
    if (is_counted) count = std::max(0.0, count - 1);
  }

  Result<ItemCounts> item(const EvidenceItem& item) const {
    auto with = by_cause({item});
    if (!with) return fail(with.error());
    auto known = by_cause({}, {item.attribute});
    if (!known) return fail(known.error());
    const auto values = possible_values(basis_.counter, item.attribute);
    if (!values) return fail(values.error());
    auto cases = basis_.counter.cases({{item}, filter_, {}});
    if (!cases) return fail(cases.error());
    ItemCounts out{item,
                   {},
                   {},
                   background_rate(total(*with), total(*known), *values),
                   basis_.strengths.weight(item.attribute),
                   std::move(*cases)};
    leave_out(*with, {item});
    leave_out(*known, {}, {item.attribute});
    out.with = std::move(*with);
    out.known = std::move(*known);
    return out;
  }

  Result<ItemCounts> word(const EvidenceItem& item, const CauseCounts& seen) const {
    auto with = by_cause({item});
    if (!with) return fail(with.error());
    leave_out(*with, {item});
    ItemCounts out{item, std::move(*with), seen, 0, 1, {}};
    out.background = total(seen) > 0 ? total(out.with) / total(seen) : 0;
    return out;
  }

  Result<EdgeCounts> edge(const std::vector<EvidenceItem>& items, std::size_t first,
                          std::size_t second) const {
    const EvidenceItem &f = items[first], &g = items[second];
    EdgeCounts out{first, second, {}, {}, {}};
    const auto take = [&](CauseCounts& into, const std::vector<EvidenceItem>& all_of,
                          const std::vector<std::string>& known) -> Result<void> {
      auto counts = by_cause(all_of, known);
      if (!counts) return fail(counts.error());
      leave_out(*counts, all_of, known);
      into = std::move(*counts);
      return {};
    };
    if (auto done = take(out.both, {f, g}, {}); !done) return fail(done.error());
    auto done = take(out.first_where_second_known, {f}, {g.attribute});
    if (!done) return fail(done.error());
    done = take(out.second_where_first_known, {g}, {f.attribute});
    if (!done) return fail(done.error());
    return out;
  }

 private:
  const Filter& filter_;
  const RankingBasis& basis_;
  const std::optional<LeftOut>& left_out_;
};

}  // namespace

Result<QuestionCounts> count_question(const std::vector<EvidenceItem>& items, const Filter& filter,
                                      const RankingBasis& basis,
                                      const std::optional<LeftOut>& left_out) {
  const Counting counting(filter, basis, left_out);
  QuestionCounts out;
  auto seen = counting.by_cause({});
  if (!seen) return fail(seen.error());
  counting.leave_out(*seen, {});
  out.seen = std::move(*seen);
  if (left_out) out.left_out = left_out->id;
  std::vector<EvidenceItem> held;
  for (const EvidenceItem& item : items) {
    const bool is_word = kind_of_attribute(item.attribute) == "word";
    auto counts = is_word ? counting.word(item, out.seen) : counting.item(item);
    if (!counts) return fail(counts.error());
    if (is_word) {
      if (total(counts->with) > 0) out.words.push_back(std::move(*counts));
      continue;
    }
    // Weighed, it would only tell causes with many cases from those with few.
    if (total(counts->with) <= 0) {
      out.never_seen.push_back(item);
      continue;
    }
    held.push_back(item);
    out.items.push_back(std::move(*counts));
  }
  out.scarcity = scarcity_of(held, basis.findings, out.seen.size(), left_out);
  const auto tree = spanning_tree(held, filter, basis.counter, basis.pairs);
  if (!tree) return fail(tree.error());
  for (const auto& [first, second] : *tree) {
    auto edge = counting.edge(held, first, second);
    if (!edge) return fail(edge.error());
    out.edges.push_back(std::move(*edge));
  }
  return out;
}

}  // namespace shoplore
