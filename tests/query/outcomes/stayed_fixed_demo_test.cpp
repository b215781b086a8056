// The demo workshop knows how often each of its repairs truly comes back, always within 200 days:
// what the records say after a year is compared with that.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

#include "query/outcomes/stayed_fixed.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/outcomes/product_by_hand.hpp"

namespace shoplore {
namespace {

using testing::DemoShop;

constexpr std::chrono::days kYear{365};

std::vector<std::string> keys_of(const FixPlan& plan) {
  std::vector<std::string> keys;
  for (const FixName& fix : plan.fixes) {
    keys.push_back(std::string(fix.action) + " " + std::string(fix.component));
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

class DemoOutcomes : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    shop_ = std::make_unique<DemoShop>(10'000, testing::Showcases::kOut);
    lives_ = fix_lives(*vehicle_histories(shop_->records().store(), shop_->vocabulary()));
  }
  static void TearDownTestSuite() { shop_.reset(); }

  static inline std::unique_ptr<DemoShop> shop_;
  static inline std::vector<FixLife> lives_;
};

struct Compared {
  std::string repair;
  StayedShare<std::chrono::days> share;
  double truth = 0;
  [[nodiscard]] bool is_covered() const {
    return share.interval.low <= truth && truth <= share.interval.high;
  }
};

std::string cause_of(const FailurePattern& pattern) {
  return std::string(pattern.component) + ":" + std::string(pattern.failure);
}

// Every plan of the world of which a share after a year is given.
std::vector<Compared> compared_with_truth(const World& world, std::span<const FixLife> lives) {
  std::vector<Compared> all;
  for (const FailurePattern& pattern : world.patterns) {
    const auto groups = stayed_fixed_by_fixes(lives, cause_of(pattern));
    for (const FixPlan& plan : pattern.plans) {
      const auto group = std::find_if(groups.begin(), groups.end(), [&](const StayedFixed& each) {
        return each.fixes == keys_of(plan);
      });
      if (group == groups.end()) continue;
      for (const auto& share : group->by_days) {
        if (share.after != kYear) continue;
        all.push_back({cause_of(pattern) + " " + group->fixes.front(), share, 1 - plan.comes_back});
      }
    }
  }
  return all;
}

TEST_F(DemoOutcomes, IntervalsCoverTheTrueRateOfComebacks) {
  const auto compared = compared_with_truth(shop_->world(), lives_);
  const auto covered = std::count_if(compared.begin(), compared.end(),
                                     [](const Compared& each) { return each.is_covered(); });
  std::printf("after a year the true share is inside the 90 %% interval of %td of %zu repairs\n",
              covered, compared.size());
  for (const Compared& each : compared) {
    if (each.is_covered()) continue;
    std::printf("  not of %s: %.3f (%.3f to %.3f), true %.3f\n", each.repair.c_str(),
                each.share.share, each.share.interval.low, each.share.interval.high, each.truth);
  }
  EXPECT_GE(compared.size(), 100U);
  EXPECT_GE(static_cast<double>(covered), 0.8 * static_cast<double>(compared.size()));
}

TEST_F(DemoOutcomes, EveryShareIsTheProductOverDays) {
  std::size_t shares = 0;
  for (const FailurePattern& pattern : shop_->world().patterns) {
    const auto own = lives_of_cause(lives_, cause_of(pattern));
    for (const auto& share : stayed_fixed(own).by_days) {
      ++shares;
      EXPECT_NEAR(share.share, testing::share_by_hand(own, share.after), 1e-12)
          << cause_of(pattern) << ", " << share.after.count() << " days";
    }
  }
  EXPECT_GE(shares, 100U);
}

}  // namespace
}  // namespace shoplore
