#include "corpus-demo/patterns.hpp"

#include <cmath>

namespace shoplore {

BandWeights weibull_bands(double shape, double scale) {
  const auto failed_by = [&](double x) { return 1 - std::exp(-std::pow(x / scale, shape)); };
  const double all = failed_by(330);
  BandWeights weights{};
  for (std::size_t band = 0; band < weights.size(); ++band) {
    const double from = 50.0 * static_cast<double>(band);
    const double to = band + 1 == weights.size() ? 330 : from + 50;
    weights[band] = (failed_by(to) - failed_by(from)) / all;
  }
  return weights;
}

double comeback_share(const FixPlan& plan) {
  return plan.share * plan.comes_back;
}

double comeback_share(const FailurePattern& pattern) {
  double sum = 0;
  for (const FixPlan& plan : pattern.plans) sum += comeback_share(plan);
  return sum;
}

double rate_of(const std::vector<EvidenceRate>& rates, std::string_view id, double base) {
  for (const EvidenceRate& rate : rates) {
    if (rate.id == id) return rate.probability;
  }
  return base;
}

}  // namespace shoplore
