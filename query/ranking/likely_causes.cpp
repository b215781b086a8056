// One pass per item over the counter's per-cause vectors; everything else is arithmetic.
#include "query/ranking/likely_causes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace shoplore {
namespace {

double total(const CauseCounts& counts) {
  return std::accumulate(counts.begin(), counts.end(), 0.0);
}

std::uint32_t whole(double count) {
  return static_cast<std::uint32_t>(std::lround(count));
}

// Between all weighing alike and each by its strength.
double weighed(double even, double by_strength, const RankingKnobs& knobs) {
  return even + knobs.strength * (by_strength - even);
}

using WhyLines = std::vector<WhyLine>;  // by CauseNumber

// With the counts of one item in each cause and in all others, of the cases it is counted among.
WhyLines counted_lines(const ItemCounts& counts, const CauseCounts& among) {
  const std::uint32_t with = whole(total(counts.with)), of = whole(total(among));
  WhyLines lines(among.size());
  for (CauseNumber cause = 0; cause < among.size(); ++cause) {
    WhyLine& line = lines[cause];
    line.item = counts.item;
    line.with_item = whole(counts.with[cause]);
    line.known = whole(among[cause]);
    line.with_item_elsewhere = with - line.with_item;
    line.known_elsewhere = of - line.known;
  }
  return lines;
}

// What one item adds: by those that looked and, of a symptom, by how usual it is to name it at all.
// A symptom that is there is written down, so it is counted among all cases, not only those that
// name it.
WhyLines why_lines(const ItemCounts& counts, const CauseCounts& seen, const RankingKnobs& knobs,
                   double tau) {
  WhyLines lines = counted_lines(counts, is_listed_when_there(counts.item) ? seen : counts.known);
  const std::vector<double> listed = listed_part(counts, seen, knobs.smoothing);
  for (CauseNumber cause = 0; cause < lines.size(); ++cause) {
    const double part = item_part(counts, cause, knobs.smoothing);
    lines[cause].weight =
        tau * (weighed(part, counts.strength * part, knobs) + knobs.listing * listed[cause]);
  }
  return lines;
}

double log_sum(const std::vector<double>& log_weights) {
  const double largest = *std::max_element(log_weights.begin(), log_weights.end());
  double sum = 0;
  for (const double each : log_weights) sum += std::exp(each - largest);
  return largest + std::log(sum);
}

double log_add(double a, double b) {
  const double largest = std::max(a, b);
  if (std::isinf(largest)) return largest;
  return largest + std::log(std::exp(a - largest) + std::exp(b - largest));
}

// By position ln(sum of all the others): from both ends, since taking one away from the sum of all
// would lose everything where that one is nearly all.
std::vector<double> logs_of_others(const std::vector<double>& log_weights) {
  constexpr double kNothing = -std::numeric_limits<double>::infinity();
  std::vector<double> others(log_weights.size(), kNothing);
  double before = kNothing, after = kNothing;
  for (std::size_t i = 0; i < others.size(); ++i) {
    others[i] = before;
    before = log_add(before, log_weights[i]);
  }
  for (std::size_t i = others.size(); i > 0; --i) {
    others[i - 1] = log_add(others[i - 1], after);
    after = log_add(after, log_weights[i - 1]);
  }
  return others;
}

void set_probabilities(Ranking& ranking, double unseen) {
  std::vector<double> log_weights;
  for (const RankedCause& row : ranking.causes) {
    double weight = row.prior + row.scarcity + row.pairs + row.likeness;
    for (const WhyLine& line : row.why) weight += line.weight;
    log_weights.push_back(weight);
  }
  log_weights.push_back(unseen_weight(unseen, log_sum(log_weights)));
  const double all = log_sum(log_weights);
  const std::vector<double> others = logs_of_others(log_weights);
  for (std::size_t i = 0; i < ranking.causes.size(); ++i) {
    ranking.causes[i].probability = std::exp(log_weights[i] - all);
    ranking.causes[i].others = -others[i];
  }
  ranking.not_in_these_records = std::exp(log_weights.back() - all);
}

}  // namespace

double unseen_weight(double prior, double recorded) {
  return prior + std::min(0.0, recorded - std::log1p(-std::exp(prior)));
}

Priors priors_of(const CauseCounts& seen) {
  const double cases = total(seen);
  double once = 0, prior_total = 0;
  for (const double n : seen) {
    if (n == 1) ++once;
    if (n > 0) prior_total += n + 0.5;
  }
  // All of them seen once would leave the recorded causes nothing, and evidence no say.
  const double unseen = std::min(once, cases - 0.5) / cases;
  Priors priors;
  for (const double n : seen) {
    priors.by_cause.push_back(n > 0 ? std::log((1 - unseen) * (n + 0.5) / prior_total) : 0);
  }
  priors.unseen = std::log(unseen);
  return priors;
}

double evidence_of_cause(const CauseColumns& columns, CauseNumber c, double tau,
                         const RankingKnobs& knobs) {
  const double stated = weighed(columns.even_items[c], columns.items[c], knobs) +
                        knobs.gamma * weighed(columns.even_pairs[c], columns.pairs[c], knobs) +
                        knobs.eta * columns.likeness[c] + knobs.listing * columns.listed[c];
  return tau * stated + knobs.words * columns.words[c] + knobs.scarcity * columns.scarcity[c];
}

double tempering(std::size_t items, const RankingKnobs& knobs) {
  if (items == 0) return knobs.sureness;
  const auto k = static_cast<double>(items);
  return knobs.sureness * std::pow(k, knobs.growth) / (1 + knobs.rho * (k - 1));
}

RowWeights row_weights(const CauseColumns& columns, const Priors& priors, const CauseCounts& seen,
                       std::size_t items, const RankingKnobs& knobs) {
  constexpr double kNothing = -std::numeric_limits<double>::infinity();
  const double tau = tempering(items, knobs);
  RowWeights weights{std::vector<double>(seen.size(), kNothing), 0, 0, 0};
  for (CauseNumber c = 0; c < seen.size(); ++c) {
    if (seen[c] <= 0) continue;
    weights.by_cause[c] = priors.by_cause[c] + evidence_of_cause(columns, c, tau, knobs);
  }
  weights.recorded = log_sum(weights.by_cause);
  weights.unrecorded = unseen_weight(priors.unseen, weights.recorded);
  weights.all = log_add(weights.recorded, weights.unrecorded);
  return weights;
}

std::vector<double> probabilities_of(const RowWeights& weights) {
  std::vector<double> probabilities;
  for (const double each : weights.by_cause) probabilities.push_back(std::exp(each - weights.all));
  probabilities.push_back(std::exp(weights.unrecorded - weights.all));
  return probabilities;
}

Result<Ranking> rank_causes(const std::vector<EvidenceItem>& items, const Filter& filter,
                            const RankingBasis& basis, const RankingKnobs& knobs,
                            const std::optional<LeftOut>& left_out) {
  const auto counts = count_question(items, filter, basis, left_out);
  if (!counts) return fail(counts.error());
  Ranking ranking;
  ranking.cases = whole(total(counts->seen));
  ranking.never_seen = counts->never_seen;
  if (ranking.cases == 0) return ranking;
  const CauseColumns columns = columns_of(*counts, knobs.smoothing);
  ranking.tau = tempering(counts->items.size(), knobs);
  const Priors priors = priors_of(counts->seen);
  std::vector<WhyLines> why;
  for (const ItemCounts& item : counts->items) {
    why.push_back(why_lines(item, counts->seen, knobs, ranking.tau));
  }
  const auto parts = word_parts(*counts);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    WhyLines lines = counted_lines(counts->words[i], counts->seen);
    for (CauseNumber c = 0; c < lines.size(); ++c) lines[c].weight = knobs.words * parts[i][c];
    why.push_back(std::move(lines));
  }
  for (CauseNumber cause = 0; cause < counts->seen.size(); ++cause) {
    if (counts->seen[cause] <= 0) continue;
    RankedCause row;
    row.cause = cause;
    row.seen = whole(counts->seen[cause]);
    row.prior = priors.by_cause[cause];
    row.scarcity = knobs.scarcity * columns.scarcity[cause];
    row.pairs =
        ranking.tau * knobs.gamma * weighed(columns.even_pairs[cause], columns.pairs[cause], knobs);
    row.likeness = ranking.tau * knobs.eta * columns.likeness[cause];
    for (WhyLines& lines : why) row.why.push_back(std::move(lines[cause]));
    ranking.causes.push_back(std::move(row));
  }
  set_probabilities(ranking, priors.unseen);
  const CauseTable& causes = basis.counter.causes();
  std::sort(ranking.causes.begin(), ranking.causes.end(), [&](const auto& a, const auto& b) {
    if (a.probability != b.probability) return a.probability > b.probability;
    return causes.key(a.cause) < causes.key(b.cause);
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
