#include "query/checks/expected_information.hpp"

#include <algorithm>
#include <cmath>

namespace shoplore {
namespace {

double bits(double share) {
  return share > 0 ? -share * std::log2(share) : 0;
}

}  // namespace

double entropy(const std::vector<double>& shares) {
  double sum = 0;
  for (const double share : shares) sum += bits(share);
  return sum;
}

std::vector<double> answer_shares(const std::vector<double>& causes,
                                  const std::vector<std::vector<double>>& rates) {
  std::vector<double> shares;
  for (const auto& rate : rates) {
    double share = 0;
    for (std::size_t c = 0; c < causes.size(); ++c) share += causes[c] * rate[c];
    shares.push_back(share);
  }
  return shares;
}

double expected_information(const std::vector<double>& causes,
                            const std::vector<std::vector<double>>& rates) {
  double anyway = 0;
  for (const auto& rate : rates) {
    for (std::size_t c = 0; c < causes.size(); ++c) anyway += causes[c] * bits(rate[c]);
  }
  // Rounding must not make a question that tells nothing look worse than that.
  return std::max(0.0, entropy(answer_shares(causes, rates)) - anyway);
}

}  // namespace shoplore
