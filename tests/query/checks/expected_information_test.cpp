#include "query/checks/expected_information.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace shoplore {
namespace {

TEST(ExpectedInformation, OfAFairCoinIsABit) {
  EXPECT_DOUBLE_EQ(entropy({.5, .5}), 1);
  EXPECT_DOUBLE_EQ(entropy({1, 0}), 0);
  EXPECT_DOUBLE_EQ(entropy({.25, .25, .25, .25}), 2);
}

struct Example {
  const char* name;
  std::vector<double> causes;
  std::vector<std::vector<double>> rates;
  double bits;
};

TEST(ExpectedInformation, IsWhatTheAnswerWouldTell) {
  const std::vector<Example> examples{
      {"tells two equal causes apart for sure", {.5, .5}, {{1, 0}, {0, 1}}, 1},
      {"answers alike whatever the cause", {.5, .5}, {{.3, .3}, {.7, .7}}, 0},
      {"the cause is known already", {1, 0}, {{.9, .1}, {.1, .9}}, 0},
      // A channel that is right nine times in ten: 1 - H(.9).
      {"right nine times in ten",
       {.5, .5},
       {{.9, .1}, {.1, .9}},
       1 + .9 * std::log2(.9) + .1 * std::log2(.1)},
      {"tells one of four from the rest",
       {.25, .25, .25, .25},
       {{1, 0, 0, 0}, {0, 1, 1, 1}},
       -.25 * std::log2(.25) - .75 * std::log2(.75)}};
  for (const Example& example : examples) {
    EXPECT_NEAR(expected_information(example.causes, example.rates), example.bits, 1e-12)
        << example.name;
  }
}

TEST(ExpectedInformation, AnswerSharesAddToOne) {
  const auto shares = answer_shares({.2, .8}, {{.9, .1}, {.1, .9}});
  EXPECT_DOUBLE_EQ(shares[0], .2 * .9 + .8 * .1);
  EXPECT_DOUBLE_EQ(shares[0] + shares[1], 1);
}

}  // namespace
}  // namespace shoplore
