#include "query/ranking/knob_descent.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/query/random_questions.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'261'126;

// Where the items tell: the true cause stands out in them.
std::vector<FitQuestion> telling_questions(std::mt19937_64& random, std::size_t count) {
  auto questions = random_questions(random, count);
  for (FitQuestion& question : questions) {
    question.items = 1 + random() % 11;
    for (auto* column : {&question.columns.even_items, &question.columns.likeness}) {
      (*column)[question.truth] += 1;
    }
  }
  return questions;
}

std::vector<double> within_ranges(std::vector<double> x) {
  for (std::size_t i = 0; i < x.size(); ++i) {
    const KnobRange& range = fitted_knobs()[i];
    const bool is_log = range.scale == KnobRange::Scale::kLogarithm;
    x[i] = std::clamp(x[i], is_log ? std::log(range.least) : range.least,
                      is_log ? std::log(range.most) : range.most);
  }
  return x;
}

TEST(KnobDescent, NoNearKnobsAreBetter) {
  std::mt19937_64 random(kSeed);
  for (int round = 0; round < 10; ++round) {
    const auto questions = telling_questions(random, 60);
    RankingKnobs start;
    start.smoothing = 6;
    const RankingKnobs found = descend(questions, start);
    EXPECT_EQ(found.smoothing, 6);
    EXPECT_EQ(found.sureness, 1);
    const std::vector<double> x = coordinates_of(found);
    EXPECT_EQ(within_ranges(x), x);
    const double least = fit_objective(questions, found, nullptr);
    EXPECT_LT(least, fit_objective(questions, start, nullptr));
    for (std::size_t i = 0; i < x.size(); ++i) {
      for (const double step : {-.05, .05}) {
        std::vector<double> moved = x;
        moved[i] += step;
        EXPECT_GT(fit_objective(questions, knobs_at(within_ranges(moved), found), nullptr),
                  least - 1e-6)
            << "seed " << kSeed << ", round " << round << ", knob " << i;
      }
    }
  }
}

// Truths drawn with the probabilities of a known sureness: it is found again.
TEST(KnobDescent, TheSurenessThatTruthsWereDrawnWithIsFound) {
  for (const double sureness : {.7, 1.0, 1.3}) {
    std::mt19937_64 random(kSeed);
    RankingKnobs knobs;
    knobs.sureness = sureness;
    std::vector<FitQuestion> questions;
    while (questions.size() < 10'000) {
      FitQuestion question = random_question(random);
      if (question.items == 0 || !std::isinf(question.priors.unseen)) continue;
      const auto p = probabilities_of(
          row_weights(question.columns, question.priors, question.seen, question.items, knobs));
      question.truth = std::discrete_distribution<CauseNumber>(p.begin(), p.end())(random);
      questions.push_back(std::move(question));
    }
    knobs.sureness = 1;
    knobs.sureness = balanced_sureness(questions, knobs);
    EXPECT_NEAR(knobs.sureness, sureness, .05) << "seed " << kSeed;
    EXPECT_NEAR(excess_sureness(questions, knobs), 0, 1e-3);
  }
}

// One cause only: it is said with p 1 and always right, however sure.
TEST(KnobDescent, SurenessStaysWhereItChangesNothing) {
  std::mt19937_64 random(kSeed);
  FitQuestion question = random_question(random);
  question.seen = {5, 0, 0, 0, 0, 0};
  question.priors = priors_of(question.seen);
  EXPECT_EQ(balanced_sureness({question}, {}), 1);
}

}  // namespace
}  // namespace shoplore::testing
