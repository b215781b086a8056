#include "query/ranking/knob_descent.hpp"

#include <cmath>
#include <nlopt.hpp>
#include <stdexcept>

#include "query/ranking/scores.hpp"

namespace shoplore {
namespace {

constexpr int kMostEvaluations = 200;
constexpr double kLeastSureness = .5, kMostSureness = 1.5;

// Keeps the best knobs it was shown: where the search stops need not be the best place it saw.
struct Search {
  const std::vector<FitQuestion>& questions;
  RankingKnobs best;
  double least = 0;

  static double value(const std::vector<double>& x, std::vector<double>& gradient, void* data) {
    auto& self = *static_cast<Search*>(data);
    const RankingKnobs knobs = knobs_at(x, self.best);
    const double here =
        fit_objective(self.questions, knobs, gradient.empty() ? nullptr : &gradient);
    if (here < self.least) {
      self.least = here;
      self.best = knobs;
    }
    return here;
  }
};

}  // namespace

RankingKnobs descend(const std::vector<FitQuestion>& questions, const RankingKnobs& start) {
  Search search{questions, start, fit_objective(questions, start, nullptr)};
  std::vector<double> least, most, x = coordinates_of(start);
  for (const KnobRange& range : fitted_knobs()) {
    const bool is_log = range.scale == KnobRange::Scale::kLogarithm;
    least.push_back(is_log ? std::log(range.least) : range.least);
    most.push_back(is_log ? std::log(range.most) : range.most);
  }
  nlopt::opt descent(nlopt::LD_LBFGS, static_cast<unsigned>(x.size()));
  descent.set_min_objective(&Search::value, &search);
  descent.set_lower_bounds(least);
  descent.set_upper_bounds(most);
  descent.set_ftol_rel(1e-7);
  descent.set_maxeval(kMostEvaluations);
  try {
    double value = 0;
    descent.optimize(x, value);
  } catch (const std::runtime_error&) {
    // Most often no step goes further down by more than rounding; what was best stands in any case.
  }
  return search.best;
}

double excess_sureness(const std::vector<FitQuestion>& questions, const RankingKnobs& knobs) {
  double sum = 0;
  for (const FitQuestion& each : questions) {
    const Judged judged = judge(
        probabilities_of(row_weights(each.columns, each.priors, each.seen, each.items, knobs)),
        each.truth);
    sum += judged.first - (judged.rank == 1 ? 1 : 0);
  }
  return sum / static_cast<double>(questions.size());
}

// Halving to a thousandth: the excess jumps where another cause comes first, so that more is not to
// be had, and each look costs as much as asking all questions again.
double balanced_sureness(const std::vector<FitQuestion>& questions, RankingKnobs knobs) {
  const auto excess_at = [&](double sureness) {
    RankingKnobs moved = knobs;
    moved.sureness = sureness;
    return excess_sureness(questions, moved);
  };
  double low = kLeastSureness, high = kMostSureness;
  if (std::abs(excess_at(high) - excess_at(low)) < 1e-9) return knobs.sureness;
  for (int i = 0; i < 10; ++i) {
    const double middle = (low + high) / 2;
    (excess_at(middle) > 0 ? high : low) = middle;
  }
  return (low + high) / 2;
}

}  // namespace shoplore
