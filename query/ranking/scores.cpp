#include "query/ranking/scores.hpp"

#include <algorithm>
#include <cmath>

namespace shoplore {

Judged judge(const std::vector<double>& probabilities, std::size_t truth) {
  Judged judged;
  judged.truth = probabilities[truth];
  // The last is no cause: it is never first.
  const std::size_t causes = probabilities.size() - 1;
  double squares = 0;
  for (std::size_t c = 0; c < causes; ++c) {
    judged.first = std::max(judged.first, probabilities[c]);
    const double hit = c == truth ? 1 : 0;
    squares += (probabilities[c] - hit) * (probabilities[c] - hit);
  }
  judged.brier = squares + probabilities.back() * probabilities.back();
  if (judged.truth <= 0) return judged;
  judged.rank = 1;
  for (std::size_t c = 0; c < causes; ++c) {
    judged.rank += c != truth && probabilities[c] >= judged.truth ? 1U : 0U;
  }
  return judged;
}

std::vector<ReliabilityBin> reliability(const std::vector<double>& said,
                                        const std::vector<char>& came_true, std::size_t bins) {
  std::vector<ReliabilityBin> out(bins);
  for (std::size_t i = 0; i < said.size(); ++i) {
    const double scaled = said[i] * static_cast<double>(bins);
    const auto above = static_cast<std::size_t>(std::max(std::ceil(scaled) - 1, 0.0));
    ReliabilityBin& bin = out[std::min(above, bins - 1)];
    ++bin.count;
    bin.said += said[i];
    bin.right += came_true[i];
  }
  for (ReliabilityBin& bin : out) {
    if (bin.count == 0) continue;
    bin.said /= static_cast<double>(bin.count);
    bin.right /= static_cast<double>(bin.count);
  }
  return out;
}

double calibration_error(const std::vector<ReliabilityBin>& bins) {
  double error = 0, count = 0;
  for (const ReliabilityBin& bin : bins) {
    error += static_cast<double>(bin.count) * std::abs(bin.said - bin.right);
    count += static_cast<double>(bin.count);
  }
  return count > 0 ? error / count : 0;
}

Scores scores_of(const std::vector<Judged>& judged) {
  Scores scores;
  scores.questions = judged.size();
  if (judged.empty()) return scores;
  std::vector<double> said;
  std::vector<char> came_true;
  for (const Judged& each : judged) {
    scores.first += each.rank == 1 ? 1 : 0;
    scores.first_three += each.rank >= 1 && each.rank <= 3 ? 1 : 0;
    scores.mean_reciprocal_rank += each.rank > 0 ? 1.0 / static_cast<double>(each.rank) : 0;
    scores.log_loss -= std::log(std::max(each.truth, kLeastProbability));
    scores.brier += each.brier;
    said.push_back(each.first);
    came_true.push_back(each.rank == 1 ? 1 : 0);
  }
  const auto n = static_cast<double>(judged.size());
  for (double* sum : {&scores.first, &scores.first_three, &scores.mean_reciprocal_rank,
                      &scores.log_loss, &scores.brier}) {
    *sum /= n;
  }
  scores.bins = reliability(said, came_true, kReliabilityBins);
  scores.calibration_error = calibration_error(scores.bins);
  return scores;
}

}  // namespace shoplore
