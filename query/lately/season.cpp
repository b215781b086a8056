#include "query/lately/season.hpp"

#include <cassert>
#include <cmath>
#include <numbers>
#include <numeric>
#include <vector>

namespace shoplore {
namespace {

constexpr double kHeldTowardsZero = 1;  // 1 / variance of b and c beforehand
constexpr double kBelievedGain = 6;     // of twice the log-likelihood
constexpr int kMostSteps = 50;

using Three = std::array<double, 3>;

struct MonthOfCounts {
  double count, cases;
  Three wave;  // 1, cosine, sine
};

Three wave_of(std::size_t month) {
  const double angle = 2 * std::numbers::pi * static_cast<double>(month) / 12;
  return {1, std::cos(angle), std::sin(angle)};
}

double exponent(const Three& fit, const Three& wave) {
  return fit[0] * wave[0] + fit[1] * wave[1] + fit[2] * wave[2];
}

double log_likelihood(const std::vector<MonthOfCounts>& months, const Three& fit) {
  double sum = 0;
  for (const MonthOfCounts& month : months) {
    const double log_share = exponent(fit, month.wave);
    sum += month.count * log_share - month.cases * std::exp(log_share);
  }
  return sum;
}

double penalised(const std::vector<MonthOfCounts>& months, const Three& fit) {
  return log_likelihood(months, fit) - kHeldTowardsZero / 2 * (fit[1] * fit[1] + fit[2] * fit[2]);
}

// Solves a symmetric positive definite system by elimination.
Three solved(std::array<Three, 3> matrix, Three right) {
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t row = i + 1; row < 3; ++row) {
      const double times = matrix[row][i] / matrix[i][i];
      for (std::size_t j = i; j < 3; ++j) matrix[row][j] -= times * matrix[i][j];
      right[row] -= times * right[i];
    }
  }
  Three solution{};
  for (std::size_t i = 3; i-- > 0;) {
    double rest = right[i];
    for (std::size_t j = i + 1; j < 3; ++j) rest -= matrix[i][j] * solution[j];
    solution[i] = rest / matrix[i][i];
  }
  return solution;
}

Three newton_step(const std::vector<MonthOfCounts>& months, const Three& fit) {
  std::array<Three, 3> information{};
  Three slope{0, -kHeldTowardsZero * fit[1], -kHeldTowardsZero * fit[2]};
  information[1][1] = information[2][2] = kHeldTowardsZero;
  for (const MonthOfCounts& month : months) {
    const double mean = month.cases * std::exp(exponent(fit, month.wave));
    for (std::size_t i = 0; i < 3; ++i) {
      slope[i] += (month.count - mean) * month.wave[i];
      for (std::size_t j = 0; j < 3; ++j) information[i][j] += mean * month.wave[i] * month.wave[j];
    }
  }
  return solved(information, slope);
}

// The penalised likelihood is concave: halved steps always get up it.
Three fitted(const std::vector<MonthOfCounts>& months, Three fit) {
  constexpr double kConverged = 1e-9;
  for (int step = 0; step < kMostSteps; ++step) {
    const Three change = newton_step(months, fit);
    const double before = penalised(months, fit);
    double part = 1;
    Three next{};
    do {
      for (std::size_t i = 0; i < 3; ++i) next[i] = fit[i] + part * change[i];
      part /= 2;
    } while (penalised(months, next) < before && part > kConverged);
    fit = next;
    if (std::abs(change[0]) + std::abs(change[1]) + std::abs(change[2]) < kConverged) break;
  }
  return fit;
}

}  // namespace

std::size_t month_of_year(std::chrono::year_month month) {
  return static_cast<unsigned>(month.month()) - 1;
}

SeasonWeights season_of(std::span<const std::uint32_t> counts, std::span<const std::uint32_t> cases,
                        std::chrono::year_month first) {
  assert(counts.size() == cases.size());
  if (counts.size() < kFewestMonthsForSeason) return kNoSeason;
  std::vector<MonthOfCounts> months;
  double all = 0, all_cases = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    months.push_back({static_cast<double>(counts[i]), static_cast<double>(cases[i]),
                      wave_of((month_of_year(first) + i) % 12)});
    all += months.back().count;
    all_cases += months.back().cases;
  }
  if (all == 0) return kNoSeason;
  const Three flat{std::log(all / all_cases), 0, 0};
  const Three fit = fitted(months, flat);
  if (2 * (log_likelihood(months, fit) - log_likelihood(months, flat)) < kBelievedGain) {
    return kNoSeason;
  }
  SeasonWeights weights{};
  for (std::size_t m = 0; m < weights.size(); ++m) weights[m] = std::exp(exponent(fit, wave_of(m)));
  const double mean = std::accumulate(weights.begin(), weights.end(), 0.0) / 12;
  for (double& weight : weights) weight /= mean;
  return weights;
}

}  // namespace shoplore
