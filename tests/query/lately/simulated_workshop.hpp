// A made-up workshop as monthly counts: about 200 cases a month over causes with realistic shares,
// some with a season, each on a few engine families. For measuring what is flagged.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "query/lately/monthly_counts.hpp"

namespace shoplore::testing {

struct Rise {
  std::size_t cause = 0;
  double times = 1;
  std::size_t from_month = 0;
};

class SimulatedWorkshop {
 public:
  static constexpr std::size_t kCauses = 60, kFamilies = 20;
  static constexpr double kCasesAMonth = 200;

  explicit SimulatedWorkshop(std::uint64_t seed) : random_(seed) {
    // Shares fall as 1 / rank^0.8, so that the commonest has about 7 % and the rarest 0.3 %.
    double all = 0;
    for (std::size_t cause = 0; cause < kCauses; ++cause) {
      shares_.push_back(std::pow(static_cast<double>(cause) + 1, -0.8));
      all += shares_.back();
    }
    for (double& share : shares_) share /= all;
    for (std::size_t cause = 0; cause < kCauses; ++cause) {
      // A third of them come with the time of year, up to five times as often at their height.
      swing_.push_back(cause % 3 == 0 ? uniform(0.3, 0.8) : 0);
      height_.push_back(uniform(0, 12));
      families_.push_back(family_weights());
    }
  }

  void set_cases_a_month(std::size_t cause, double cases) { shares_[cause] = cases / kCasesAMonth; }

  [[nodiscard]] static std::string cause_key(std::size_t cause) {
    return "part" + std::to_string(cause) + ":worn";
  }

  // Appends a month to `counts`; the workshop itself is busier in some than in others.
  void add_month(MonthlyCounts& counts, const std::vector<Rise>& rises = {}) {
    if (counts.cases.empty()) begin(counts);
    const std::size_t month = counts.cases.size();
    const double busy = uniform(0.85, 1.15);
    counts.cases.push_back(0);
    std::size_t pair = 0;
    for (CountSeries& family : counts.families) family.by_month.push_back(0);
    for (std::size_t cause = 0; cause < kCauses; ++cause) {
      double mean = kCasesAMonth * busy * shares_[cause] * season(cause, month);
      for (const Rise& rise : rises) {
        if (rise.cause == cause && month >= rise.from_month) mean *= rise.times;
      }
      counts.causes[cause].by_month.push_back(0);
      for (std::size_t family = 0; family < kFamilies; ++family) {
        const double weight = families_[cause][family];
        if (weight == 0) continue;
        const auto cases = std::poisson_distribution<std::uint32_t>(mean * weight)(random_);
        counts.pairs[pair++].by_month.push_back(cases);
        counts.causes[cause].by_month.back() += cases;
        counts.families[family].by_month.back() += cases;
        counts.cases.back() += cases;
      }
    }
  }

 private:
  void begin(MonthlyCounts& counts) const {
    counts.first = std::chrono::year(2020) / 1;
    for (std::size_t cause = 0; cause < kCauses; ++cause) {
      counts.causes.push_back({cause_key(cause), "", {}, 0});
      for (std::size_t family = 0; family < kFamilies; ++family) {
        if (families_[cause][family] == 0) continue;
        counts.pairs.push_back({cause_key(cause), "family" + std::to_string(family), {}, 0});
      }
    }
    for (std::size_t family = 0; family < kFamilies; ++family) {
      counts.families.push_back({"", "family" + std::to_string(family), {}, 0});
    }
  }

  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  // Mean 1 over a year.
  double season(std::size_t cause, std::size_t month) const {
    const double angle = 2 * std::numbers::pi * (static_cast<double>(month) - height_[cause]) / 12;
    return 1 + swing_[cause] * std::cos(angle);
  }

  // Each failure on about six of the families, on some far more than on others.
  std::vector<double> family_weights() {
    std::vector<double> weights(kFamilies);
    double all = 0;
    for (double& weight : weights) {
      if (uniform(0, 1) < 0.3) weight = std::exp(uniform(-2, 2));
      all += weight;
    }
    if (all == 0) weights[0] = all = 1;
    for (double& weight : weights) weight /= all;
    return weights;
  }

  std::mt19937_64 random_;
  std::vector<double> shares_, swing_, height_;
  std::vector<std::vector<double>> families_;
};

}  // namespace shoplore::testing
