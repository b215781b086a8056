#include "api/http/background_fit.hpp"

#include <gtest/gtest.h>

#include <atomic>

#include "query/ranking/kept_knobs.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

std::shared_ptr<const Snapshot> snapshot_of(const DemoShop& shop) {
  return Snapshot::open(shop.records().folder()).value();
}

TEST(BackgroundFit, FitsWhenDueAndNotAgain) {
  const DemoShop shop(230);
  const ShopFolder folder = shop.records().folder();
  ASSERT_FALSE(read_knobs(folder).value());
  std::atomic<int> fitted = 0;
  {
    BackgroundFit fit(folder, [&] { ++fitted; });
    fit.consider(snapshot_of(shop), shop.vocabulary());
  }  // waits
  EXPECT_EQ(fitted, 1);
  const auto kept = read_knobs(folder).value();
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->revision, snapshot_of(shop)->revision());
  EXPECT_GE(kept->cases, 230);
  EXPECT_LT(kept->log_loss, kept->start_log_loss);
  {
    BackgroundFit fit(folder, [&] { ++fitted; });
    fit.consider(snapshot_of(shop), shop.vocabulary());
  }
  EXPECT_EQ(fitted, 1);
}

TEST(BackgroundFit, LeavesASmallShopAlone) {
  const DemoShop shop(100);
  std::atomic<int> fitted = 0;
  {
    BackgroundFit fit(shop.records().folder(), [&] { ++fitted; });
    fit.consider(snapshot_of(shop), shop.vocabulary());
  }
  EXPECT_EQ(fitted, 0);
}

}  // namespace
}  // namespace shoplore::testing
