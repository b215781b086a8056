// Which cases a repair's hours and cost are counted on, and the quantiles they come to.
#include "query/repair_plan/work_spread.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "query/quantile.hpp"
#include "tests/query/repair_plan/made_cases.hpp"

namespace shoplore {
namespace {

using testing::plan_case;

const std::vector<std::string> kCoil{"replace ignition_coil"};
const std::vector<std::string> kPlugs{"replace spark_plug"};

struct Row {
  const char* name;
  std::vector<double> ascending;
  double p, value;
};

class Quantile : public ::testing::TestWithParam<Row> {};

TEST_P(Quantile, IsTypeSeven) {
  EXPECT_NEAR(quantile(GetParam().ascending, GetParam().p), GetParam().value, 1e-12);
}

// By hand from the definition of type 7 (Hyndman & Fan 1996, Amer. Statist. 50:361, table 1): with
// h = (n - 1) p + 1, linear between x(floor h) and the next.
INSTANTIATE_TEST_SUITE_P(ByHand, Quantile,
                         ::testing::Values(Row{"Tenth", {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, 0.1, 1.9},
                                           Row{"Half", {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, 0.5, 5.5},
                                           Row{"Ninth", {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, 0.9, 9.1},
                                           Row{"TenthOfFive", {2.1, 2.4, 3.0, 3.3, 5.0}, 0.1, 2.22},
                                           Row{"HalfOfFive", {2.1, 2.4, 3.0, 3.3, 5.0}, 0.5, 3.0},
                                           Row{"NinthOfFive", {2.1, 2.4, 3.0, 3.3, 5.0}, 0.9, 4.32},
                                           Row{"Least", {4, 7}, 0, 4},
                                           Row{"Greatest", {4, 7}, 1, 7},
                                           Row{"OfOne", {4}, 0.9, 4}),
                         [](const auto& row) { return std::string(row.param.name); });

std::vector<PlanCase> clocked(const std::vector<double>& hours, const std::string& family,
                              const std::string& make, const std::vector<std::string>& fixes) {
  std::vector<PlanCase> cases;
  for (const double value : hours) {
    cases.push_back(plan_case("case", fixes, family, make));
    cases.back().record.correction->hours = Hours{{}, value, {}};
  }
  return cases;
}

void join(std::vector<PlanCase>& cases, std::vector<PlanCase> more) {
  cases.insert(cases.end(), more.begin(), more.end());
}

WorkSpread hours_of(const std::vector<PlanCase>& cases, const WorkOf& work) {
  return work_spread(cases, WorkFigure::kClockedHours, work, usual_currency(cases));
}

TEST(WorkSpread, TakesTheNarrowestCircleWithFiveCases) {
  auto cases = clocked({1, 2, 3, 4}, "cm14p", "cormont", kCoil);
  const WorkOf work{kCoil, "cormont", "cm14p"};
  join(cases, clocked({5}, "cm16p", "cormont", kCoil));
  auto spread = hours_of(cases, work);
  EXPECT_EQ(spread.vehicles, VehiclesAlike::kMake);
  EXPECT_EQ(spread.work, WorkAlike::kSameFixes);
  EXPECT_EQ(spread.cases, 5U);
  ASSERT_TRUE(spread.spread);
  EXPECT_DOUBLE_EQ(spread.spread->median, 3);

  join(cases, clocked({9}, "cm14p", "cormont", kCoil));
  spread = hours_of(cases, work);
  EXPECT_EQ(spread.vehicles, VehiclesAlike::kEngineFamily);
  EXPECT_DOUBLE_EQ(spread.spread->median, 3);
  EXPECT_DOUBLE_EQ(spread.spread->high, 7);
}

TEST(WorkSpread, AnotherRepairOfTheCauseComesAfterAnotherVehicle) {
  auto cases = clocked({1, 1, 1}, "cm14p", "cormont", kCoil);
  join(cases, clocked({2, 2}, "al12p", "arlune", kCoil));
  join(cases, clocked({7, 7, 7, 7, 7}, "cm14p", "cormont", kPlugs));
  EXPECT_EQ(hours_of(cases, {kCoil, "cormont", "cm14p"}).vehicles, VehiclesAlike::kAll);
  cases.erase(cases.begin());
  const auto wider = hours_of(cases, {kCoil, "cormont", "cm14p"});
  EXPECT_EQ(wider.work, WorkAlike::kAnyFixes);
  EXPECT_EQ(wider.vehicles, VehiclesAlike::kEngineFamily);
  EXPECT_EQ(wider.cases, 7U);
}

TEST(WorkSpread, FewCasesAreListedAndNotSummedUp) {
  auto cases = clocked({2.5}, "cm14p", "cormont", kCoil);
  join(cases, clocked({1.5}, "al12p", "arlune", kCoil));
  join(cases, clocked({9}, "al12p", "arlune", kPlugs));
  const auto few = hours_of(cases, {kCoil, "cormont", "cm14p"});
  EXPECT_FALSE(few.spread);
  EXPECT_EQ(few.values, (std::vector<double>{1.5, 2.5}));
  EXPECT_EQ(few.vehicles, VehiclesAlike::kAll);
  EXPECT_EQ(few.work, WorkAlike::kSameFixes);
}

TEST(WorkSpread, AnUnknownVehicleIsInNoCircleOfUnknownOnes) {
  const auto cases = clocked({1, 2, 3, 4, 5, 6}, "", "", kCoil);
  EXPECT_EQ(hours_of(cases, {kCoil, "", ""}).vehicles, VehiclesAlike::kAll);
}

TEST(WorkSpread, NothingWrittenDownIsNothing) {
  const auto none = hours_of({plan_case("case", kCoil)}, {kCoil, "", ""});
  EXPECT_EQ(none.cases, 0U);
  EXPECT_FALSE(none.spread);
  EXPECT_TRUE(none.values.empty());
}

PlanCase charged(double cost, const std::string& currency) {
  PlanCase one = plan_case("case", kCoil);
  one.record.correction->cost_total = cost;
  one.record.correction->currency = currency;
  return one;
}

TEST(WorkSpread, CostsOfAnotherCurrencyAreCountedAndLeftOut) {
  std::vector<PlanCase> cases;
  for (const double cost : {100., 200., 300., 400., 500.}) cases.push_back(charged(cost, "EUR"));
  cases.push_back(charged(9'000, "SEK"));
  cases.push_back(charged(8'000, ""));
  const Currency currency = usual_currency(cases);
  EXPECT_EQ(currency.name, "EUR");
  EXPECT_EQ(currency.in_others, 1U);
  EXPECT_EQ(currency.unnamed, 1U);
  const auto cost = work_spread(cases, WorkFigure::kCost, {kCoil, "", ""}, currency);
  EXPECT_EQ(cost.cases, 5U);
  EXPECT_DOUBLE_EQ(cost.spread->median, 300);
  EXPECT_DOUBLE_EQ(cost.spread->low, 140);
  EXPECT_DOUBLE_EQ(cost.spread->high, 460);
}

TEST(WorkSpread, WithoutACurrencyNoCostIsComparable) {
  std::vector<PlanCase> cases(6, charged(100, ""));
  const Currency currency = usual_currency(cases);
  EXPECT_EQ(currency.name, "");
  EXPECT_EQ(currency.unnamed, 6U);
  EXPECT_EQ(work_spread(cases, WorkFigure::kCost, {kCoil, "", ""}, currency).cases, 0U);
}

// A share p of the values lies below the quantile, give or take one value.
TEST(WorkSpread, AQuantileParts) {
  constexpr std::uint64_t kSeed = 11;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<double> values(1 + random() % 60);
    for (double& value : values) value = static_cast<double>(random() % 1'000'000);
    std::sort(values.begin(), values.end());
    const double p = static_cast<double>(random() % 101) / 100;
    const double at = quantile(values, p);
    const auto below = static_cast<double>(
        std::count_if(values.begin(), values.end(), [&](double v) { return v < at; }));
    const auto up_to = static_cast<double>(
        std::count_if(values.begin(), values.end(), [&](double v) { return v <= at; }));
    const double place = p * static_cast<double>(values.size() - 1);
    EXPECT_LE(below, std::ceil(place + 1e-9)) << trial;
    EXPECT_GE(up_to, std::floor(place + 1e-9)) << trial;
  }
}

}  // namespace
}  // namespace shoplore
