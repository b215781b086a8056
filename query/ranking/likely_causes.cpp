// One pass per item over the counter's per-cause vectors; everything else is arithmetic.
#include "query/likely_causes.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;

double total(const Counts& counts) {
  return static_cast<double>(std::accumulate(counts.begin(), counts.end(), std::uint64_t{0}));
}

// An item's counts by cause, the left-out case already taken away.
struct ItemCounts {
  EvidenceItem item;
  Counts with, known;
  double background = 0;
};

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

Result<ItemCounts> counts_of(const EvidenceItem& item, const Filter& filter,
                             const CaseCounter& counter, const std::optional<LeftOut>& left_out) {
  auto with = counter.by_cause({{item}, filter});
  if (!with) return fail(with.error());
  auto known = counter.known_by_cause(item.attribute, filter);
  if (!known) return fail(known.error());
  if (left_out && holds(*left_out, item)) --(*with)[left_out->cause];
  if (left_out && knows(*left_out, item.attribute)) --(*known)[left_out->cause];
  double values = 1;  // a mention: (N_f + 1/2) / (N + 1) is the attribute's form with V = 2
  if (known_by(item.attribute) == KnownBy::kMention) {
    values = 2;
  } else {
    const auto possible = possible_values(counter, item.attribute);
    if (!possible) return fail(possible.error());
    values = *possible;
  }
  const double background = (total(*with) + 0.5) / (total(*known) + values / 2);
  return ItemCounts{item, std::move(*with), std::move(*known), background};
}

WhyLine why_line(const ItemCounts& counts, CauseNumber cause, const RankingKnobs& knobs,
                 double tau) {
  WhyLine line;
  line.item = counts.item;
  line.with_item = counts.with[cause];
  line.known = counts.known[cause];
  line.with_item_elsewhere = static_cast<std::uint32_t>(total(counts.with)) - line.with_item;
  line.known_elsewhere = static_cast<std::uint32_t>(total(counts.known)) - line.known;
  const double rate = (line.with_item + knobs.m * counts.background) / (line.known + knobs.m);
  line.weight = tau * std::log(rate / counts.background);
  return line;
}

// From how often each was seen and what its why lines add.
void set_probabilities(Ranking& ranking) {
  double once = 0, prior_total = 0;
  std::vector<double> log_weights;
  for (const RankedCause& row : ranking.causes) {
    if (row.seen == 1) ++once;
    prior_total += row.seen + 0.5;
    double log_weight = std::log(row.seen + 0.5);
    for (const WhyLine& line : row.why) log_weight += line.weight;
    log_weights.push_back(log_weight);
  }
  // All of them seen once would leave the recorded causes nothing, and evidence no say.
  const double unseen = std::min(once, ranking.cases - 0.5) / ranking.cases;
  // Relative to the largest, so that nothing overflows.
  const double largest = *std::max_element(log_weights.begin(), log_weights.end());
  const double scale = (1 - unseen) / prior_total;
  ranking.not_in_these_records = unseen * std::exp(-largest);
  double sum = ranking.not_in_these_records;
  for (std::size_t i = 0; i < log_weights.size(); ++i) {
    ranking.causes[i].probability = scale * std::exp(log_weights[i] - largest);
    sum += ranking.causes[i].probability;
  }
  ranking.not_in_these_records /= sum;
  for (RankedCause& row : ranking.causes) row.probability /= sum;
}

}  // namespace

Result<Ranking> rank_causes(const std::vector<EvidenceItem>& items, const Filter& filter,
                            const CaseCounter& counter, const RankingKnobs& knobs,
                            const std::optional<LeftOut>& left_out) {
  auto seen = counter.by_cause({{}, filter});
  if (!seen) return fail(seen.error());
  if (left_out) --(*seen)[left_out->cause];
  std::vector<ItemCounts> counted;
  for (const EvidenceItem& item : items) {
    auto counts = counts_of(item, filter, counter, left_out);
    if (!counts) return fail(counts.error());
    counted.push_back(std::move(*counts));
  }

  Ranking ranking;
  ranking.cases = static_cast<std::uint32_t>(total(*seen));
  if (ranking.cases == 0) return ranking;
  if (!items.empty()) ranking.tau = 1 / (1 + knobs.rho * static_cast<double>(items.size() - 1));
  for (CauseNumber cause = 0; cause < seen->size(); ++cause) {
    if ((*seen)[cause] == 0) continue;
    RankedCause row{cause, 0, (*seen)[cause], {}};
    for (const ItemCounts& counts : counted) {
      row.why.push_back(why_line(counts, cause, knobs, ranking.tau));
    }
    ranking.causes.push_back(std::move(row));
  }
  set_probabilities(ranking);
  std::sort(ranking.causes.begin(), ranking.causes.end(), [&](const auto& a, const auto& b) {
    if (a.probability != b.probability) return a.probability > b.probability;
    return counter.causes().key(a.cause) < counter.causes().key(b.cause);
  });
  return ranking;
}

std::vector<EvidenceItem> ranking_items(const std::vector<EvidenceItem>& stated) {
  const auto has = [&](std::string_view attribute) {
    return std::any_of(stated.begin(), stated.end(),
                       [&](const EvidenceItem& item) { return item.attribute == attribute; });
  };
  const bool family = has("engine_family"), model = has("model");
  std::vector<EvidenceItem> items;
  for (const EvidenceItem& item : stated) {
    const std::string& name = item.attribute;
    const bool says_the_same = (name == "model" && family) ||
                               (name == "make" && (family || model)) ||
                               (name == "fuel" && (family || model)) || name == "transmission";
    if (!says_the_same) items.push_back(item);
  }
  return items;
}

}  // namespace shoplore
