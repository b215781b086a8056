#include "query/ranking/fit_objective.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "query/ranking/scores.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'261'126;
constexpr std::size_t kCauses = 6;

std::vector<double> random_column(std::mt19937_64& random, double spread) {
  std::vector<double> column(kCauses);
  for (double& each : column) each = std::normal_distribution<double>(0, spread)(random);
  return column;
}

// Some causes seen once, one of them left out of the records altogether.
FitQuestion random_question(std::mt19937_64& random) {
  FitQuestion question;
  CauseColumns& c = question.columns;
  for (auto* column : {&c.items, &c.even_items, &c.pairs, &c.even_pairs, &c.likeness, &c.listed,
                       &c.words, &c.scarcity}) {
    *column = random_column(random, .7);
  }
  for (std::size_t i = 0; i < kCauses; ++i) {
    question.seen.push_back(static_cast<double>(random() % 5));
  }
  question.seen[0] = 3;
  question.truth = 0;
  question.priors = priors_of(question.seen);
  question.items = 1 + random() % 12;
  return question;
}

std::vector<FitQuestion> random_questions(std::mt19937_64& random, std::size_t count) {
  std::vector<FitQuestion> questions;
  for (std::size_t i = 0; i < count; ++i) questions.push_back(random_question(random));
  return questions;
}

RankingKnobs random_knobs(std::mt19937_64& random) {
  std::vector<double> x = coordinates_of({});
  for (std::size_t i = 0; i < x.size(); ++i) {
    x[i] += std::uniform_real_distribution<double>(-.4, .4)(random);
  }
  return knobs_at(x, {});
}

TEST(FitObjective, ItsGradientIsThatOfSmallSteps) {
  std::mt19937_64 random(kSeed);
  for (int round = 0; round < 100; ++round) {
    const auto questions = random_questions(random, 1 + random() % 4);
    const RankingKnobs knobs = random_knobs(random);
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
}

// The fit and the answers must not drift apart.
TEST(FitObjective, LogLossIsThatOfTheProbabilitiesSaid) {
  std::mt19937_64 random(kSeed);
  for (int round = 0; round < 100; ++round) {
    const FitQuestion question = random_question(random);
    const RankingKnobs knobs = random_knobs(random);
    const auto said = probabilities_of(question.columns, question.seen, question.items, knobs);
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
