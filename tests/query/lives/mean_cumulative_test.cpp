#include "query/lives/mean_cumulative.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <set>

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 11;

MeanCumulative curve_of(const std::vector<RepairHistory>& histories) {
  return mean_cumulative(histories).value();
}

std::vector<RepairHistory> draw_histories(std::size_t count, std::mt19937_64& random) {
  std::uniform_int_distribution<int> day(1, 30), few(0, 4);
  std::vector<RepairHistory> histories(count);
  for (RepairHistory& history : histories) {
    history.exit = day(random) + 30;
    const int from = few(random) == 0 ? day(random) / 2 : 0;
    if (from > 0) history.entry = from;
    for (int i = few(random); i > 0; --i) {
      history.events.push_back(from + std::ceil(day(random) / 30. * (history.exit - from)));
    }
  }
  return histories;
}

bool watched(const RepairHistory& history, double age) {
  return age <= history.exit && (!history.entry || *history.entry < age);
}

std::set<double> ages_of(const std::vector<RepairHistory>& histories) {
  std::set<double> ages;
  for (const auto& history : histories) ages.insert(history.events.begin(), history.events.end());
  return ages;
}

// The published formulas, one age and one vehicle at a time.
struct Plain {
  double mean = 0, variance = 0;
};

Plain by_definition(const std::vector<RepairHistory>& histories, double until) {
  Plain plain;
  for (const RepairHistory& one : histories) {
    double deviation = 0, mean = 0;
    for (const double age : ages_of(histories)) {
      if (age > until) break;
      double at_risk = 0, events = 0;
      for (const RepairHistory& each : histories) {
        at_risk += watched(each, age) ? 1 : 0;
        events += static_cast<double>(std::count(each.events.begin(), each.events.end(), age));
      }
      mean += events / at_risk;
      if (!watched(one, age)) continue;
      const auto own = std::count(one.events.begin(), one.events.end(), age);
      deviation += (static_cast<double>(own) - events / at_risk) / at_risk;
    }
    plain.mean = mean;
    plain.variance += deviation * deviation;
  }
  return plain;
}

TEST(MeanCumulative, IsTheDefinition) {
  std::mt19937_64 random(kSeed);
  for (std::size_t count = 1; count <= 25; ++count) {
    const auto histories = draw_histories(count, random);
    for (const MeanCumulativeStep& step : curve_of(histories).steps) {
      const Plain plain = by_definition(histories, step.time);
      EXPECT_NEAR(step.mean, plain.mean, 1e-12) << count << " vehicles at " << step.time;
      EXPECT_NEAR(step.variance, plain.variance, 1e-12) << count << " vehicles at " << step.time;
    }
  }
}

TEST(MeanCumulative, AllWatchedAlikeGiveMeanAndVarianceOfTheirCounts) {
  const MeanCumulative curve = curve_of({{10, {1, 2, 3, 4}}, {10, {}}, {10, {5}}, {10, {6, 6, 9}}});
  EXPECT_EQ(curve.steps.back().events, 1U);
  EXPECT_DOUBLE_EQ(curve.steps.back().mean, 2);
  EXPECT_NEAR(curve.steps.back().variance, (4. + 4 + 1 + 1) / 4 / 4, 1e-12);
}

TEST(MeanCumulative, RepairsThatComeTogetherWidenIt) {
  const MeanCumulative spread = curve_of({{10, {1}}, {10, {2}}, {10, {3}}, {10, {4}}});
  const MeanCumulative together = curve_of({{10, {1, 2, 3, 4}}, {10}, {10}, {10}});
  EXPECT_DOUBLE_EQ(spread.steps.back().mean, together.steps.back().mean);
  EXPECT_NEAR(spread.steps.back().variance, 0, 1e-15);
  EXPECT_GT(together.steps.back().variance, .1);
}

TEST(MeanCumulative, OrderOfVehiclesAndEventsDoesNotMatter) {
  std::mt19937_64 random(kSeed);
  auto histories = draw_histories(20, random);
  const MeanCumulative before = curve_of(histories);
  std::shuffle(histories.begin(), histories.end(), random);
  for (auto& history : histories) std::reverse(history.events.begin(), history.events.end());
  const MeanCumulative after = curve_of(histories);
  ASSERT_EQ(before.steps.size(), after.steps.size());
  for (std::size_t i = 0; i < before.steps.size(); ++i) {
    EXPECT_EQ(before.steps[i].events, after.steps[i].events);
    EXPECT_DOUBLE_EQ(before.steps[i].mean, after.steps[i].mean);
    EXPECT_NEAR(before.steps[i].variance, after.steps[i].variance, 1e-14);
  }
}

TEST(MeanCumulative, EveryVehicleTwiceHalvesTheVariance) {
  std::mt19937_64 random(kSeed);
  auto histories = draw_histories(15, random);
  const MeanCumulative once = curve_of(histories);
  const auto copy = histories;
  histories.insert(histories.end(), copy.begin(), copy.end());
  const MeanCumulative twice = curve_of(histories);
  for (std::size_t i = 0; i < once.steps.size(); ++i) {
    EXPECT_NEAR(twice.steps[i].mean, once.steps[i].mean, 1e-12);
    EXPECT_NEAR(twice.steps[i].variance, once.steps[i].variance / 2, 1e-12);
  }
}

TEST(MeanCumulative, IntervalHoldsTheMeanAndIsPositive) {
  std::mt19937_64 random(kSeed);
  const MeanCumulative curve = curve_of(draw_histories(20, random));
  for (const MeanCumulativeStep& step : curve.steps) {
    const auto shown = repairs_by(curve, step.time), wide = repairs_by(curve, step.time, .99);
    ASSERT_TRUE(shown && wide);
    EXPECT_NEAR(shown->value, step.mean, 1e-12);
    EXPECT_LT(0, wide->low);
    EXPECT_LT(wide->low, shown->low);
    EXPECT_LT(shown->low, step.mean);
    EXPECT_LT(step.mean, shown->high);
    EXPECT_NEAR(shown->low * shown->high, step.mean * step.mean, 1e-9) << "alike on the log scale";
  }
}

TEST(MeanCumulative, SaysNothingBeforeTheFirstRepairAndBeyondTheLastWatch) {
  const MeanCumulative curve = curve_of({{10, {4}}, {20, {5}}});
  EXPECT_EQ(repairs_by(curve, 3.9), std::nullopt);
  EXPECT_TRUE(repairs_by(curve, 4));
  EXPECT_TRUE(repairs_by(curve, 20));
  EXPECT_EQ(repairs_by(curve, 20.1), std::nullopt);
  EXPECT_TRUE(curve_of({{10, {}}}).steps.empty());
}

TEST(MeanCumulative, BadHistoriesAreRefusedByNumber) {
  const double never = std::numeric_limits<double>::infinity();
  const struct {
    const char* name;
    std::vector<RepairHistory> histories;
    std::string place, message;
  } rows[] = {
      {"none", {}, "", "no vehicles were given"},
      {"no end", {{never, {}}}, "vehicle 1", "its exit is not a time of 0 or more"},
      {"negative entry", {{5}, {5, {}, -1}}, "vehicle 2", "its entry is not a time of 0 or more"},
      {"entry at exit", {{5, {}, 5}}, "vehicle 1", "its entry is not before its exit"},
      {"event that is no number",
       {{5, {std::nan("")}}},
       "vehicle 1",
       "an event is not a time of 0 or more"},
      {"event after exit",
       {{5, {2, 5.5}}},
       "vehicle 1",
       "an event at 5.5 is outside the time it was watched"},
      {"event at entry",
       {{5, {}}, {5, {2}, 2}},
       "vehicle 2",
       "an event at 2 is outside the time it was watched"}};
  for (const auto& row : rows) {
    const auto curve = mean_cumulative(row.histories);
    ASSERT_FALSE(curve) << row.name;
    EXPECT_EQ(curve.error().code, ErrorCode::kInvalidInput) << row.name;
    EXPECT_EQ(curve.error().place, row.place) << row.name;
    EXPECT_EQ(curve.error().message, row.message) << row.name;
  }
  EXPECT_TRUE(mean_cumulative(std::vector<RepairHistory>{{5, {5}}})) << "an event at exit counts";
}

}  // namespace
}  // namespace shoplore
