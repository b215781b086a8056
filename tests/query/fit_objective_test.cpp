#include "query/ranking/fit_objective.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "query/ranking/scores.hpp"
#include "tests/query/random_questions.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'261'126;
RankingKnobs random_knobs(std::mt19937_64& random) {
  std::vector<double> x = coordinates_of({});
  for (std::size_t i = 0; i < x.size(); ++i) {
    x[i] += std::uniform_real_distribution<double>(-.4, .4)(random);
  }
  return knobs_at(x, {});
}

// Every way the weight of "not in these records" may take must have been tried.
struct Reached {
  int nothing_unrecorded = 0, bound = 0, free = 0, no_items = 0;
  void note(const FitQuestion& question, const RankingKnobs& knobs) {
    no_items += question.items == 0 ? 1 : 0;
    const RowWeights weights =
        row_weights(question.columns, question.priors, question.seen, question.items, knobs);
    if (std::isinf(question.priors.unseen)) {
      ++nothing_unrecorded;
    } else {
      ++(weights.unrecorded < question.priors.unseen ? free : bound);
    }
  }
};

TEST(FitObjective, ItsGradientIsThatOfSmallSteps) {
  std::mt19937_64 random(kSeed);
  Reached reached;
  for (int round = 0; round < 100; ++round) {
    const auto questions = random_questions(random, 1 + random() % 4);
    const RankingKnobs knobs = random_knobs(random);
    for (const FitQuestion& question : questions) reached.note(question, knobs);
    std::vector<double> gradient;
    EXPECT_EQ(fit_objective(questions, knobs, &gradient), fit_objective(questions, knobs, nullptr));
    const std::vector<double> x = coordinates_of(knobs);
    for (std::size_t i = 0; i < x.size(); ++i) {
      const auto at = [&](double step) {
        std::vector<double> moved = x;
        moved[i] += step;
        return fit_objective(questions, knobs_at(moved, knobs), nullptr);
      };
      EXPECT_NEAR(gradient[i], (at(1e-5) - at(-1e-5)) / 2e-5, 1e-6)
          << "seed " << kSeed << ", round " << round << ", knob " << i;
    }
  }
  EXPECT_GT(reached.nothing_unrecorded, 10);
  EXPECT_GT(reached.bound, 10);
  EXPECT_GT(reached.free, 10);
  EXPECT_GT(reached.no_items, 5);
}

// The fit and the answers must not drift apart.
TEST(FitObjective, LogLossIsThatOfTheProbabilitiesSaid) {
  std::mt19937_64 random(kSeed);
  for (int round = 0; round < 100; ++round) {
    const FitQuestion question = random_question(random);
    const RankingKnobs knobs = random_knobs(random);
    const auto said = probabilities_of(
        row_weights(question.columns, question.priors, question.seen, question.items, knobs));
    double sum = 0;
    for (const double p : said) sum += p;
    EXPECT_NEAR(sum, 1, 1e-12);
    EXPECT_NEAR(log_loss({question}, knobs), -std::log(judge(said, question.truth).truth), 1e-10);
  }
}

TEST(FitObjective, AHopelessQuestionCostsNoMoreTheWorseItIs) {
  std::mt19937_64 random(kSeed);
  FitQuestion question = random_question(random);
  question.seen = {3, 3, 0, 0, 0, 0};
  question.priors = priors_of(question.seen);
  question.columns.words = {-40, 0, 0, 0, 0, 0};
  EXPECT_NEAR(log_loss({question}, {}), -std::log(kLeastProbability), 1e-12);
  std::vector<double> gradient;
  (void)fit_objective({question}, {}, &gradient);
  EXPECT_TRUE(std::all_of(gradient.begin(), gradient.end(), [](double g) { return g == 0; }));
}

TEST(FitObjective, KnobsComeBackAndTheOthersStay) {
  RankingKnobs knobs;
  knobs.smoothing = 6;
  knobs.sureness = 1.25;
  std::vector<double> x = coordinates_of(knobs);
  for (std::size_t i = 0; i < x.size(); ++i) x[i] += .01 * static_cast<double>(i + 1);
  const RankingKnobs moved = knobs_at(x, knobs);
  EXPECT_EQ(moved.smoothing, 6);
  EXPECT_EQ(moved.sureness, 1.25);
  EXPECT_NEAR(moved.rho, .03 * std::exp(.01), 1e-12);
  const std::vector<double> back = coordinates_of(moved);
  for (std::size_t i = 0; i < x.size(); ++i) EXPECT_NEAR(back[i], x[i], 1e-12);
}

TEST(FitObjective, TheStartIsWithinEveryRange) {
  const std::vector<double> start = coordinates_of({});
  ASSERT_EQ(start.size(), fitted_knobs().size());
  for (const KnobRange& range : fitted_knobs()) {
    EXPECT_GE(RankingKnobs{}.*range.knob, range.least);
    EXPECT_LE(RankingKnobs{}.*range.knob, range.most);
    EXPECT_GT(range.spread, 0);
  }
}

}  // namespace
}  // namespace shoplore::testing
