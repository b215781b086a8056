#include "query/checks/repair_order.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

namespace shoplore {
namespace {

using Order = std::vector<std::size_t>;

// The cheapest of all orders, tried one by one.
double cheapest(const std::vector<RepairAction>& actions, const RemovalMinutes& removal_minutes,
                const std::set<std::string>& open) {
  Order order(actions.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  double least = expected_minutes(order, actions, removal_minutes, open);
  while (std::next_permutation(order.begin(), order.end())) {
    least = std::min(least, expected_minutes(order, actions, removal_minutes, open));
  }
  return least;
}

TEST(RepairOrder, ExpectedMinutesAreCountedUntilOneCures) {
  // 10 for sure, then 20 + 5 with the half that is left, the cover once; then 4 with a fifth.
  const std::vector<RepairAction> actions{{.5, 10, {}}, {.3, 20, {"cover"}}, {.2, 4, {"cover"}}};
  EXPECT_DOUBLE_EQ(expected_minutes({0, 1, 2}, actions, {{"cover", 5}}, {}),
                   10 + .5 * (20 + 5) + .2 * 4);
  EXPECT_DOUBLE_EQ(expected_minutes({0, 1, 2}, actions, {{"cover", 5}}, {"cover"}),
                   10 + .5 * 20 + .2 * 4);
}

TEST(RepairOrder, WithoutRemovalsFallsByChancePerMinute) {
  const std::vector<RepairAction> actions{{.2, 30, {}}, {.5, 40, {}}, {.3, 10, {}}};
  EXPECT_EQ(best_repair_order(actions, {}, {}).order, (Order{2, 1, 0}));
}

TEST(RepairOrder, CheapOnesBehindAClosedCoverWaitUntilItIsOff) {
  const std::vector<RepairAction> actions{{.3, 10, {"cover"}}, {.4, 30, {}}};
  EXPECT_EQ(best_repair_order(actions, {{"cover", 60}}, {}).order, (Order{1, 0}));
  EXPECT_EQ(best_repair_order(actions, {{"cover", 60}}, {"cover"}).order, (Order{0, 1}));
}

TEST(RepairOrder, OneCoverSharedByManyIsWorthOpening) {
  // Each alone behind its own cover would come last; together they pay for the one.
  const std::vector<RepairAction> together{
      {.25, 5, {"cover"}}, {.25, 5, {"cover"}}, {.25, 5, {"cover"}}, {.25, 40, {}}};
  const std::vector<RepairAction> apart{
      {.25, 5, {"a"}}, {.25, 5, {"b"}}, {.25, 5, {"c"}}, {.25, 40, {}}};
  EXPECT_EQ(best_repair_order(together, {{"cover", 60}}, {}).order, (Order{0, 1, 2, 3}));
  EXPECT_EQ(best_repair_order(apart, {{"a", 60}, {"b", 60}, {"c", 60}}, {}).order.front(), 3U);
}

TEST(RepairOrder, NothingToDoCostsNothing) {
  EXPECT_EQ(best_repair_order({}, {}, {}).expected_minutes, 0);
}

// Removals in a random tree: each lies behind the one it was hung on.
struct Problem {
  std::vector<RepairAction> actions;
  RemovalMinutes removal_minutes;
  std::set<std::string> open;
};

Problem random_problem(std::mt19937_64& random) {
  const auto number = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  Problem problem;
  std::vector<std::vector<std::string>> ways{{}};
  for (int i = number(0, 5); i > 0; --i) {
    auto way = ways[static_cast<std::size_t>(number(0, static_cast<int>(ways.size()) - 1))];
    way.push_back("cover " + std::to_string(i));
    problem.removal_minutes[way.back()] = number(0, 90);
    if (way.size() == 1 && number(0, 5) == 0) problem.open.insert(way.back());
    ways.push_back(std::move(way));
  }
  const int actions = number(1, 8);
  double left = 1;
  for (int i = 0; i < actions; ++i) {
    const double probability = left * number(1, 60) / 100.0;
    left -= probability;
    problem.actions.push_back(
        {probability, static_cast<double>(number(1, 120)),
         ways[static_cast<std::size_t>(number(0, static_cast<int>(ways.size()) - 1))]});
  }
  return problem;
}

TEST(RepairOrder, IsNeverDearerThanTheCheapestOfAllOrders) {
  std::mt19937_64 random(20261126);
  for (int i = 0; i < 1'000; ++i) {
    const Problem problem = random_problem(random);
    const RepairOrder best =
        best_repair_order(problem.actions, problem.removal_minutes, problem.open);
    ASSERT_EQ(best.order.size(), problem.actions.size());
    ASSERT_NEAR(best.expected_minutes,
                cheapest(problem.actions, problem.removal_minutes, problem.open), 1e-9)
        << "problem " << i;
  }
}

}  // namespace
}  // namespace shoplore
