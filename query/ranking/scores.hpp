// How good probabilities were, once the truth is known.
//
// Top-1, top-3, mean reciprocal rank; log loss (-mean ln p of the truth, in nats); Brier score
// (Brier 1950, the sum over causes of squared differences, mean over questions); expected
// calibration error over fifteen bins of the first cause's probability (as Guo, Pleiss, Sun &
// Weinberger 2017 count), an inner edge belonging to the
// lower bin (Naeini, Cooper & Hauskrecht 2015). All shares are of all questions asked.
// Pure functions, any thread.
#pragma once

#include <cstddef>
#include <vector>

namespace shoplore {

// One question that was asked again: what was said of each cause, the truth among them.
struct Judged {
  double truth = 0;      // probability given to the true cause; 0 where it was not ranked at all
  double first = 0;      // probability of the first cause
  std::size_t rank = 0;  // of the true cause, 1 is first; 0 where it was not ranked
  double brier = 0;
};

struct ReliabilityBin {
  std::size_t count = 0;
  double said = 0, right = 0;  // means
};

struct Scores {
  std::size_t questions = 0;
  double first = 0, first_three = 0, mean_reciprocal_rank = 0;
  double log_loss = 0, brier = 0, calibration_error = 0;
  std::vector<ReliabilityBin> bins;
};

inline constexpr std::size_t kReliabilityBins = 15;
// A truth that was given nothing costs as much as one given this.
inline constexpr double kLeastProbability = 1e-9;

// From probabilities by cause (what is beyond the recorded causes last) and the true cause.
// Of equal probabilities the truth comes last: no credit for a tie.
[[nodiscard]] Judged judge(const std::vector<double>& probabilities, std::size_t truth);

[[nodiscard]] Scores scores_of(const std::vector<Judged>& judged);

// Bins of equal width over [0, 1] of (said, came true) pairs.
[[nodiscard]] std::vector<ReliabilityBin> reliability(const std::vector<double>& said,
                                                      const std::vector<char>& came_true,
                                                      std::size_t bins);
[[nodiscard]] double calibration_error(const std::vector<ReliabilityBin>& bins);

}  // namespace shoplore
