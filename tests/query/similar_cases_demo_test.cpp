// Whether the cases shown as like a complaint are of its cause, first of all the first ones: 300
// complaints of cases the records do not hold, asked by their words alone.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

#include "indexer/case_keys.hpp"
#include "query/similar_cases.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/ordered_gain.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint32_t kShown = 5;

TEST(SimilarCasesDemo, TheFirstAreOfTheSameCause) {
  const DemoShop shop(2'400);
  const auto seen = shop.ledger().by_cause({}).value();
  double cases = 0;
  for (const std::uint32_t each : seen) cases += each;
  double as_shown = 0, turned_round = 0, by_chance = 0;
  int asked = 0;
  for (const DemoCase& drawn : shop.unseen(300, 7)) {
    const auto cause = shop.cause_of(drawn);
    if (!cause || seen[*cause] < kShown || drawn.record.complaint.empty()) continue;
    const auto page =
        find_similar({drawn.record.complaint, {}, kShown, ""}, shop.snapshot(),
                     shop.records().store(), shop.vocabulary(), shop.records().recogniser());
    ASSERT_TRUE(page) << describe(page.error());
    const std::string name =
        display_cause_key(cause_key(*drawn.record.cause, shop.vocabulary()), shop.vocabulary());
    std::vector<double> gains;
    for (const SimilarCase& each : page->cases) gains.push_back(each.cause == name ? 1 : 0);
    const std::vector<double> ideal(kShown, 1);
    as_shown += normalised_gain(gains, ideal, kShown);
    std::reverse(gains.begin(), gains.end());
    turned_round += normalised_gain(gains, ideal, kShown);
    by_chance += seen[*cause] / cases;
    ++asked;
  }
  ASSERT_GE(asked, 200);
  std::cout << fmt::format(
      "normalised gain of the first {}: {:.3f}, in reverse {:.3f}, by chance {:.3f}; {} asked\n",
      kShown, as_shown / asked, turned_round / asked, by_chance / asked, asked);
  EXPECT_GT(as_shown, 5 * by_chance);
  EXPECT_GT(as_shown, turned_round);
}

}  // namespace
}  // namespace shoplore::testing
