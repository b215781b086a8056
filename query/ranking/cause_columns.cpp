#include "query/ranking/cause_columns.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shoplore {
namespace {

constexpr double kMentionPull = 2, kListedPull = 1;  // cases that mention or name it
constexpr double kWordPull = 2;                      // cases of a word that say nothing
constexpr double kWordRepetition = 0.08;             // how much words repeat one another
constexpr double kPairPull = 3;  // cases the rate without the other item counts for

std::vector<std::vector<double>> rates_of(const QuestionCounts& counts, double smoothing) {
  std::vector<std::vector<double>> rates(counts.items.size());
  for (std::size_t f = 0; f < rates.size(); ++f) {
    for (CauseNumber c = 0; c < counts.seen.size(); ++c) {
      rates[f].push_back(rate_in(counts.items[f], c, smoothing));
    }
  }
  return rates;
}

void add_pairs(const QuestionCounts& counts, const std::vector<std::vector<double>>& rates,
               CauseColumns& columns) {
  for (const EdgeCounts& edge : counts.edges) {
    const double first_strength = counts.items[edge.first].strength;
    const double second_strength = counts.items[edge.second].strength;
    for (CauseNumber c = 0; c < counts.seen.size(); ++c) {
      const double first = rates[edge.first][c], second = rates[edge.second][c];
      const double first_given =
          (edge.both[c] + kPairPull * first) / (edge.second_where_first_known[c] + kPairPull);
      const double second_given =
          (edge.both[c] + kPairPull * second) / (edge.first_where_second_known[c] + kPairPull);
      const double first_lift = std::log(first_given / first) / 2;
      const double second_lift = std::log(second_given / second) / 2;
      columns.pairs[c] += first_strength * first_lift + second_strength * second_lift;
      columns.even_pairs[c] += first_lift + second_lift;
    }
  }
}

// Sums B_i over the cases that hold any of the items; the others all have k ln epsilon.
void add_likeness(const QuestionCounts& counts, const std::vector<std::vector<double>>& rates,
                  CauseColumns& columns) {
  std::uint64_t last = 0;
  for (const ItemCounts& item : counts.items) {
    for (const CaseCause& each : item.cases) last = std::max<std::uint64_t>(last, each.id.value);
  }
  std::vector<double> shared(last + 1);
  std::vector<CauseNumber> cause_of(last + 1);
  std::vector<char> is_touched(last + 1);
  for (std::size_t f = 0; f < counts.items.size(); ++f) {
    std::vector<double> gain;
    for (const double rate : rates[f]) {
      gain.push_back(std::log(((1 - kEpsilon) + kEpsilon * rate) / (kEpsilon * rate)));
    }
    for (const CaseCause& each : counts.items[f].cases) {
      shared[each.id.value] += gain[each.cause];
      cause_of[each.id.value] = each.cause;
      is_touched[each.id.value] = 1;
    }
  }
  if (counts.left_out && counts.left_out->value <= last) is_touched[counts.left_out->value] = 0;
  std::vector<double> sum(counts.seen.size()), untouched = counts.seen;
  for (std::size_t i = 0; i <= last; ++i) {
    if (is_touched[i] == 0) continue;
    sum[cause_of[i]] += std::exp(shared[i]);
    untouched[cause_of[i]] -= 1;
  }
  const double base = static_cast<double>(counts.items.size()) * std::log(kEpsilon);
  for (CauseNumber c = 0; c < sum.size(); ++c) {
    if (counts.seen[c] <= 0) continue;
    columns.likeness[c] = base + std::log((sum[c] + untouched[c]) / counts.seen[c]);
  }
}

}  // namespace

double rate_in(const ItemCounts& counts, CauseNumber cause, double smoothing) {
  const bool is_mention = known_by(counts.item.attribute) == KnownBy::kMention;
  const double m = is_mention ? kMentionPull / counts.background : smoothing;
  return (counts.with[cause] + m * counts.background) / (counts.known[cause] + m);
}

double item_part(const ItemCounts& counts, CauseNumber cause, double smoothing) {
  return std::log(rate_in(counts, cause, smoothing) / counts.background);
}

bool is_listed_when_there(const EvidenceItem& item) {
  return kind_of_attribute(item.attribute) == "symptom" && item.value == "present";
}

std::vector<double> listed_part(const ItemCounts& item, const CauseCounts& seen, double smoothing) {
  std::vector<double> part(seen.size());
  if (!is_listed_when_there(item.item)) return part;
  const double known = std::accumulate(item.known.begin(), item.known.end(), 0.0);
  const double cases = std::accumulate(seen.begin(), seen.end(), 0.0);
  const double rate = (known + 0.5) / (cases + 1), m = std::max(smoothing, kListedPull / rate);
  for (CauseNumber c = 0; c < seen.size(); ++c) {
    part[c] = std::log((item.known[c] + m * rate) / (seen[c] + m) / rate);
  }
  return part;
}

std::vector<std::vector<double>> word_parts(const QuestionCounts& counts) {
  const auto words = static_cast<double>(counts.words.size());
  const double tempering = 1 / (1 + kWordRepetition * (words - 1));
  std::vector<std::vector<double>> parts;
  for (const ItemCounts& word : counts.words) {
    std::vector<double>& part = parts.emplace_back(counts.seen.size());
    for (CauseNumber c = 0; c < counts.seen.size(); ++c) {
      const double expected = counts.seen[c] * word.background;
      part[c] = tempering * std::log((word.with[c] + kWordPull) / (expected + kWordPull));
    }
  }
  return parts;
}

CauseColumns columns_of(const QuestionCounts& counts, double smoothing) {
  CauseColumns columns;
  for (auto* column :
       {&columns.items, &columns.pairs, &columns.likeness, &columns.listed, &columns.words,
        &columns.even_items, &columns.even_pairs, &columns.scarcity}) {
    column->resize(counts.seen.size());
  }
  for (const std::vector<double>& part : word_parts(counts)) {
    for (CauseNumber c = 0; c < part.size(); ++c) columns.words[c] += part[c];
  }
  columns.scarcity = counts.scarcity;
  if (counts.items.empty()) return columns;
  const auto rates = rates_of(counts, smoothing);
  for (const ItemCounts& item : counts.items) {
    for (CauseNumber c = 0; c < counts.seen.size(); ++c) {
      const double part = item_part(item, c, smoothing);
      columns.items[c] += item.strength * part;
      columns.even_items[c] += part;
    }
    const std::vector<double> listed = listed_part(item, counts.seen, smoothing);
    for (CauseNumber c = 0; c < counts.seen.size(); ++c) columns.listed[c] += listed[c];
  }
  add_pairs(counts, rates, columns);
  add_likeness(counts, rates, columns);
  return columns;
}

}  // namespace shoplore
