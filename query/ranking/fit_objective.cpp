#include "query/ranking/fit_objective.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "query/ranking/scores.hpp"

namespace shoplore {
namespace {

using Scale = KnobRange::Scale;

RowWeights weigh(const FitQuestion& question, const RankingKnobs& knobs) {
  return row_weights(question.columns, question.priors, question.seen, question.items, knobs);
}

double loss_of(const FitQuestion& question, const RowWeights& weights) {
  return std::min(weights.all - weights.by_cause[question.truth], -std::log(kLeastProbability));
}

// How the log weight of one cause moves with each x.
class Slopes {
 public:
  Slopes(const FitQuestion& question, const RankingKnobs& knobs)
      : columns_(question.columns), knobs_(knobs), tau_(tempering(question.items, knobs)) {
    if (question.items == 0) return;
    const auto k = static_cast<double>(question.items);
    by_ln_rho_ = -knobs.rho * (k - 1) / (1 + knobs.rho * (k - 1));
    by_growth_ = std::log(k);
  }

  // In the order of fitted_knobs, which must be kept the same.
  std::array<double, 8> of(CauseNumber c) const {
    const double items = columns_.items[c] - columns_.even_items[c];
    const double pairs = columns_.pairs[c] - columns_.even_pairs[c];
    const double even = columns_.even_items[c] + knobs_.gamma * columns_.even_pairs[c];
    const double strong = items + knobs_.gamma * pairs;
    const double stated = even + knobs_.strength * strong + knobs_.eta * columns_.likeness[c] +
                          knobs_.listing * columns_.listed[c];
    return {tau_ * by_ln_rho_ * stated,
            tau_ * (columns_.even_pairs[c] + knobs_.strength * pairs),
            tau_ * columns_.likeness[c],
            tau_ * by_growth_ * stated,
            tau_ * strong,
            tau_ * columns_.listed[c],
            columns_.words[c],
            columns_.scarcity[c]};
  }

 private:
  const CauseColumns& columns_;
  const RankingKnobs& knobs_;
  double tau_ = 1, by_ln_rho_ = 0, by_growth_ = 0;
};

// Along which -ln P(truth) grows: P of each cause less what was true. Where "not in these records"
// moves with the recorded causes, its share of the sum is theirs.
void add_slope(const FitQuestion& question, const RowWeights& weights, const RankingKnobs& knobs,
               std::vector<double>& gradient) {
  if (weights.all - weights.by_cause[question.truth] > -std::log(kLeastProbability)) return;
  const bool moves =
      unseen_weight(question.priors.unseen, weights.recorded) < question.priors.unseen;
  const double sum = moves ? weights.recorded : weights.all;
  const Slopes slopes(question, knobs);
  for (CauseNumber c = 0; c < question.seen.size(); ++c) {
    if (question.seen[c] <= 0) continue;
    const double excess = std::exp(weights.by_cause[c] - sum) - (c == question.truth ? 1.0 : 0.0);
    const auto of_cause = slopes.of(c);
    for (std::size_t i = 0; i < of_cause.size(); ++i) gradient[i] += excess * of_cause[i];
  }
}

}  // namespace

// Scarcity ends at a half: past questions with part of their evidence hidden at random would take
// more than all of it, but one question in two is asked at booking in, where findings are as few
// whatever the cause. With all of it causes whose records are thin were said there a tenth too
// often (unequal_records_test).
const std::vector<KnobRange>& fitted_knobs() {
  static const std::vector<KnobRange> kKnobs{
      {&RankingKnobs::rho, Scale::kLogarithm, 1e-4, 10, 1.5},
      {&RankingKnobs::gamma, Scale::kPlain, 0, 3, .5},
      {&RankingKnobs::eta, Scale::kPlain, 0, 8, .5},
      {&RankingKnobs::growth, Scale::kPlain, -1, 1, .2},
      {&RankingKnobs::strength, Scale::kPlain, 0, 2, .5},
      {&RankingKnobs::listing, Scale::kPlain, 0, 3, .5},
      {&RankingKnobs::words, Scale::kPlain, 0, 4, .5},
      {&RankingKnobs::scarcity, Scale::kPlain, 0, .5, .5},
  };
  return kKnobs;
}

std::vector<double> coordinates_of(const RankingKnobs& knobs) {
  std::vector<double> x;
  for (const KnobRange& range : fitted_knobs()) {
    const double value = knobs.*range.knob;
    x.push_back(range.scale == Scale::kLogarithm ? std::log(value) : value);
  }
  return x;
}

RankingKnobs knobs_at(const std::vector<double>& x, RankingKnobs knobs) {
  assert(x.size() == fitted_knobs().size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    const KnobRange& range = fitted_knobs()[i];
    knobs.*range.knob = range.scale == Scale::kLogarithm ? std::exp(x[i]) : x[i];
  }
  return knobs;
}

double log_loss(const std::vector<FitQuestion>& questions, const RankingKnobs& knobs) {
  double sum = 0;
  for (const FitQuestion& question : questions) sum += loss_of(question, weigh(question, knobs));
  return sum / static_cast<double>(questions.size());
}

double fit_objective(const std::vector<FitQuestion>& questions, const RankingKnobs& knobs,
                     std::vector<double>* gradient) {
  if (gradient != nullptr) gradient->assign(fitted_knobs().size(), 0);
  double sum = 0;
  for (const FitQuestion& question : questions) {
    const RowWeights weights = weigh(question, knobs);
    sum += loss_of(question, weights);
    if (gradient != nullptr) add_slope(question, weights, knobs, *gradient);
  }
  const std::vector<double> x = coordinates_of(knobs), start = coordinates_of(RankingKnobs{});
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double away = (x[i] - start[i]) / fitted_knobs()[i].spread;
    sum += away * away / 2;
    if (gradient != nullptr) (*gradient)[i] += away / fitted_knobs()[i].spread;
  }
  const auto n = static_cast<double>(questions.size());
  if (gradient != nullptr) {
    for (double& each : *gradient) each /= n;
  }
  return sum / n;
}

}  // namespace shoplore
