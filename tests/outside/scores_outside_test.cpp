// Scores of probabilities against published examples.
#include <gtest/gtest.h>

#include "query/ranking/scores.hpp"

namespace shoplore {
namespace {

// scikit-learn documentation, brier_score_loss: y 0,1,1,0; p .1,.9,.8,.3 gives 0.0375. Two-class
// Brier is half of ours, which sums over both causes.
TEST(ScoresOutside, BrierOfTheScikitLearnExample) {
  const std::vector<Judged> judged{judge({.1, .9, 0}, 1), judge({.9, .1, 0}, 0),
                                   judge({.8, .2, 0}, 0), judge({.3, .7, 0}, 1)};
  EXPECT_NEAR(scores_of(judged).brier / 2, 0.0375, 1e-12);
  EXPECT_NEAR(scores_of(judged).log_loss, 0.197634881642, 1e-9);
}

// scikit-learn documentation, log_loss: spam, ham, ham, spam with (.1,.9) (.9,.1) (.8,.2) (.35,.65)
// for (ham, spam) gives 0.21616.
TEST(ScoresOutside, LogLossOfTheScikitLearnExample) {
  const std::vector<Judged> judged{judge({.1, .9, 0}, 1), judge({.9, .1, 0}, 0),
                                   judge({.8, .2, 0}, 0), judge({.35, .65, 0}, 1)};
  EXPECT_NEAR(scores_of(judged).log_loss, 0.216161874681, 1e-9);
}

// scikit-learn documentation, calibration_curve: three uniform bins; observed 0, .5, 1, mean said
// .2, .525, .85. The error .1388889 follows from the counts 3, 2, 4.
TEST(ScoresOutside, ReliabilityOfTheScikitLearnExample) {
  const auto bins =
      reliability({.1, .2, .3, .4, .65, .7, .8, .9, 1}, {0, 0, 0, 0, 1, 1, 1, 1, 1}, 3);
  const std::vector<double> right{0, .5, 1}, said{.2, .525, .85};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(bins[i].right, right[i], 1e-12);
    EXPECT_NEAR(bins[i].said, said[i], 1e-12);
  }
  EXPECT_NEAR(calibration_error(bins), 0.1388889, 1e-7);
}

// Ranks 3, 2, 1: mean reciprocal rank 11/18 (a common textbook example).
TEST(ScoresOutside, MeanReciprocalRankOfThreeTwoOne) {
  const std::vector<Judged> judged{judge({.5, .3, .2, 0}, 2), judge({.5, .3, .2, 0}, 1),
                                   judge({.5, .3, .2, 0}, 0)};
  EXPECT_NEAR(scores_of(judged).mean_reciprocal_rank, 11.0 / 18, 1e-12);
}

}  // namespace
}  // namespace shoplore
