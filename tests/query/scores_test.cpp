#include "query/ranking/scores.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace shoplore {
namespace {

TEST(Scores, JudgeTellsRankAndDistance) {
  const Judged judged = judge({.5, .3, .1, .1}, 1);  // the last is "not in these records"
  EXPECT_DOUBLE_EQ(judged.truth, .3);
  EXPECT_DOUBLE_EQ(judged.first, .5);
  EXPECT_EQ(judged.rank, 2U);
  EXPECT_NEAR(judged.brier, .25 + .49 + .01 + .01, 1e-12);
}

TEST(Scores, ATieIsNoCredit) {
  EXPECT_EQ(judge({.4, .4, .2}, 0).rank, 2U);
  EXPECT_EQ(judge({.4, .4, .2}, 1).rank, 2U);
}

TEST(Scores, ATruthThatWasNotRankedCounts) {
  const Judged judged = judge({.6, 0, .4}, 1);
  EXPECT_EQ(judged.rank, 0U);
  const Scores scores = scores_of({judged});
  EXPECT_EQ(scores.first, 0);
  EXPECT_EQ(scores.mean_reciprocal_rank, 0);
  EXPECT_NEAR(scores.log_loss, -std::log(kLeastProbability), 1e-12);
}

TEST(Scores, OfNothingAreNothing) {
  EXPECT_EQ(scores_of({}).questions, 0U);
  EXPECT_EQ(calibration_error({}), 0);
}

TEST(Scores, BinsHoldEveryQuestionOnce) {
  std::vector<Judged> judged;
  for (int i = 0; i <= 100; ++i) judged.push_back(judge({i / 100.0, 1 - i / 100.0, 0}, 0));
  std::size_t in_bins = 0;
  for (const ReliabilityBin& bin : scores_of(judged).bins) in_bins += bin.count;
  EXPECT_EQ(in_bins, judged.size());
}

}  // namespace
}  // namespace shoplore
