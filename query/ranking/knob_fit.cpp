#include "query/ranking/knob_fit.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <nlopt.hpp>

#include "query/ranking/scores.hpp"

namespace shoplore {
namespace {

constexpr std::array<double, 3> kHidden{0, .5, .75};
constexpr std::array<double, 4> kSmoothing{.1, .5, 2, 6};
constexpr RankingKnobs kStart{};
constexpr int kMostSteps = 300;

struct Asked {
  QuestionCounts counts;
  CauseNumber truth = 0;
};

// A question's columns at one smoothing, with what no knob moves.
struct Prepared {
  CauseColumns columns;
  Priors priors;
  const Asked* asked = nullptr;
};

Result<std::vector<Asked>> ask_all(const RankingModel& model, const std::vector<PastCase>& cases,
                                   const Recogniser* recogniser, std::mt19937_64& random) {
  std::vector<const PastCase*> chosen;
  for (const PastCase& past : cases) {
    if (past.seen > 1 && !past.questions.empty()) chosen.push_back(&past);
  }
  std::shuffle(chosen.begin(), chosen.end(), random);
  if (chosen.size() > kMostQuestions) chosen.resize(kMostQuestions);
  std::vector<Asked> asked;
  for (const PastCase* past : chosen) {
    const PastQuestion question = question_of(*past, recogniser);
    for (const double hidden : kHidden) {
      const auto items = some_of(question, hidden, random);
      auto counts = model.count(items, {}, past->stated);
      if (!counts) return fail(counts.error());
      asked.push_back({std::move(*counts), past->stated.cause});
    }
  }
  return asked;
}

// Of its true cause. The same as probabilities_of, which would work everything out anew each time.
double probability_of_truth(const Prepared& prepared, const RankingKnobs& knobs) {
  const Asked& asked = *prepared.asked;
  const double tau = tempering(asked.counts.items.size(), knobs);
  const auto weight = [&](CauseNumber c) {
    return prepared.priors.by_cause[c] + evidence_of_cause(prepared.columns, c, tau, knobs);
  };
  const double truth = weight(asked.truth);
  double sum = 0;
  for (CauseNumber c = 0; c < asked.counts.seen.size(); ++c) {
    if (asked.counts.seen[c] > 0) sum += std::exp(weight(c) - truth);
  }
  sum += std::exp(unseen_weight(prepared.priors.unseen, truth + std::log(sum)) - truth);
  return 1 / sum;
}

double log_loss(const std::vector<Prepared>& prepared, const RankingKnobs& knobs) {
  double sum = 0;
  for (const Prepared& each : prepared) {
    sum -= std::log(std::max(probability_of_truth(each, knobs), kLeastProbability));
  }
  return sum / static_cast<double>(prepared.size());
}

double squared(double value) {
  return value * value;
}

double pull_to_start(const RankingKnobs& knobs, std::size_t questions) {
  return (squared((std::log(knobs.rho) - std::log(kStart.rho)) / 1.5) +
          squared((knobs.gamma - kStart.gamma) / .5) + squared((knobs.eta - kStart.eta) / .5) +
          squared((knobs.growth - kStart.growth) / .2) +
          squared((knobs.listing - kStart.listing) / .5) +
          squared((knobs.words - kStart.words) / .5) +
          squared((knobs.strength - kStart.strength) / .5)) /
         (2 * static_cast<double>(questions));
}

RankingKnobs knobs_of(const std::vector<double>& x, double smoothing) {
  RankingKnobs knobs;
  knobs.smoothing = smoothing;
  knobs.rho = std::exp(x[0]);
  knobs.gamma = x[1];
  knobs.eta = x[2];
  knobs.growth = x[3];
  knobs.strength = x[4];
  knobs.listing = x[5];
  knobs.words = x[6];
  return knobs;
}

struct Objective {
  const std::vector<Prepared>& prepared;
  double smoothing;
  static double value(const std::vector<double>& x, std::vector<double>&, void* data) {
    const auto& self = *static_cast<const Objective*>(data);
    const RankingKnobs knobs = knobs_of(x, self.smoothing);
    return log_loss(self.prepared, knobs) + pull_to_start(knobs, self.prepared.size());
  }
};

struct Best {
  RankingKnobs knobs;
  double value = 0;
};

// At this smoothing.
Best descend(const std::vector<Prepared>& prepared, double smoothing) {
  Objective objective{prepared, smoothing};
  nlopt::opt search(nlopt::LN_NELDERMEAD, 7);
  search.set_min_objective(&Objective::value, &objective);
  search.set_lower_bounds({std::log(1e-4), 0, 0, -1, 0, 0, 0});
  search.set_upper_bounds({std::log(10), 3, 8, 1, 2, 3, 4});
  search.set_xtol_rel(1e-3);
  search.set_maxeval(kMostSteps);
  search.set_initial_step(std::vector<double>{.5, .2, .2, .1, -.2, .2, -.4});
  std::vector<double> x{std::log(kStart.rho), kStart.gamma,   kStart.eta,  kStart.growth,
                        kStart.strength,      kStart.listing, kStart.words};
  Best best;
  search.optimize(x, best.value);
  best.knobs = knobs_of(x, smoothing);
  return best;
}

std::vector<Prepared> prepare(const std::vector<Asked>& asked, double smoothing) {
  std::vector<Prepared> prepared;
  for (const Asked& each : asked) {
    prepared.push_back({columns_of(each.counts, smoothing), priors_of(each.counts.seen), &each});
  }
  return prepared;
}

// How much surer of its first cause it is than it is right, on average over all questions.
double excess_sureness(const std::vector<Prepared>& prepared, const RankingKnobs& knobs) {
  double sum = 0;
  for (const Prepared& each : prepared) {
    const Asked& asked = *each.asked;
    const Judged judged =
        judge(probabilities_of(each.columns, asked.counts.seen, asked.counts.items.size(), knobs),
              asked.truth);
    sum += judged.first - (judged.rank == 1 ? 1 : 0);
  }
  return sum / static_cast<double>(prepared.size());
}

// Where it is as sure as it is right, between two halves of a bracket.
double fitting_sureness(const std::vector<Prepared>& prepared, RankingKnobs knobs) {
  double low = .5, high = 1.5;
  for (int i = 0; i < 10; ++i) {
    knobs.sureness = (low + high) / 2;
    (excess_sureness(prepared, knobs) > 0 ? high : low) = knobs.sureness;
  }
  return knobs.sureness;
}

}  // namespace

Result<KnobFit> fit_knobs(const RankingModel& model, const std::vector<PastCase>& cases,
                          std::uint64_t seed, const Recogniser* recogniser) {
  KnobFit fit;
  if (cases.size() < kFewestCasesToFit) return fit;
  std::mt19937_64 random(seed);
  const auto asked = ask_all(model, cases, recogniser, random);
  if (!asked) return fail(asked.error());
  if (asked->empty()) return fit;
  fit.questions = asked->size() / kHidden.size();
  fit.start_log_loss = log_loss(prepare(*asked, kStart.smoothing), kStart);
  std::optional<Best> best;
  for (const double smoothing : kSmoothing) {
    const std::vector<Prepared> prepared = prepare(*asked, smoothing);
    const Best found = descend(prepared, smoothing);
    if (best && found.value >= best->value) continue;
    best = found;
  }
  fit.knobs = best->knobs;
  const std::vector<Prepared> prepared = prepare(*asked, fit.knobs.smoothing);
  fit.knobs.sureness = fitting_sureness(prepared, fit.knobs);
  fit.log_loss = log_loss(prepared, fit.knobs);
  return fit;
}

}  // namespace shoplore
