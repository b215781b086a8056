// Past questions of a fit with columns drawn at random: for testing what is only arithmetic on
// them.
#pragma once

#include <random>
#include <vector>

#include "query/ranking/fit_objective.hpp"

namespace shoplore::testing {

inline constexpr std::size_t kRandomCauses = 6;

inline std::vector<double> random_column(std::mt19937_64& random, double spread) {
  std::vector<double> column(kRandomCauses);
  for (double& each : column) each = std::normal_distribution<double>(0, spread)(random);
  return column;
}

// Some causes seen once or not at all; a question that knows nothing among them. The first cause is
// the true one.
inline FitQuestion random_question(std::mt19937_64& random) {
  FitQuestion question;
  CauseColumns& c = question.columns;
  for (auto* column : {&c.items, &c.even_items, &c.pairs, &c.even_pairs, &c.likeness, &c.listed,
                       &c.words, &c.scarcity}) {
    *column = random_column(random, .7);
  }
  for (std::size_t i = 0; i < kRandomCauses; ++i) {
    question.seen.push_back(static_cast<double>(random() % 5));
  }
  question.seen[0] = 3;
  question.priors = priors_of(question.seen);
  question.items = random() % 12;
  return question;
}

inline std::vector<FitQuestion> random_questions(std::mt19937_64& random, std::size_t count) {
  std::vector<FitQuestion> questions;
  for (std::size_t i = 0; i < count; ++i) questions.push_back(random_question(random));
  return questions;
}

}  // namespace shoplore::testing
