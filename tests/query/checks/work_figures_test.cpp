#include "query/checks/work_figures.hpp"
#include "indexer/case_keys.hpp"

#include <gtest/gtest.h>

#include <fstream>

#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

// Every figure against a plain walk over the drawn cases.
TEST(WorkFigures, AreMediansOfTheShopsOwnCases) {
  const DemoShop shop(300);
  const WorkFigures figures = work_figures(shop.records().store(), shop.vocabulary()).value();
  std::vector<Case> records;
  generate_workshop(shop.world(), shop.vocabulary(), {300, 1},
                    [&](const DemoCase& drawn) { records.push_back(drawn.record); });
  std::map<std::string, std::vector<double>> minutes, hours;
  for (const Case& record : records) {
    for (const Check& check : record.checks) {
      if (check.minutes) minutes[check.id].push_back(check.minutes->value);
    }
    if (record.state != CaseState::kClosed || !record.cause || !record.correction) continue;
    if (!record.correction->hours || !record.correction->hours->clocked) continue;
    hours[cause_key(*record.cause, shop.vocabulary())].push_back(
        60 * *record.correction->hours->clocked);
  }
  const auto lower_median = [](std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[(values.size() - 1) / 2];
  };
  ASSERT_GE(minutes.size(), 20U);
  EXPECT_EQ(figures.checks.size(), minutes.size());
  for (const auto& [check, values] : minutes) {
    EXPECT_EQ(figures.checks.at(check).minutes, lower_median(values)) << check;
    EXPECT_EQ(figures.checks.at(check).cases, static_cast<std::int64_t>(values.size())) << check;
  }
  for (const auto& [cause, values] : hours) {
    EXPECT_NEAR(figures.repairs.at(cause).minutes, lower_median(values), 1e-9) << cause;
  }
  EXPECT_EQ(figures.currency, "EUR");
  EXPECT_TRUE(figures.hour_costs);
}

TEST(WorkFigures, ComeBackAsTheyWereKept) {
  const DemoShop shop(120);
  const ShopFolder folder = shop.records().folder();
  EXPECT_TRUE(read_figures(folder).value().checks.empty());
  const WorkFigures figures = work_figures(shop.records().store(), shop.vocabulary()).value();
  ASSERT_TRUE(keep_figures(folder, figures));
  const WorkFigures read = read_figures(folder).value();
  ASSERT_EQ(read.checks.size(), figures.checks.size());
  ASSERT_EQ(read.repairs.size(), figures.repairs.size());
  for (const auto& [cause, repair] : figures.repairs) {
    EXPECT_EQ(read.repairs.at(cause).removals, repair.removals);
    EXPECT_EQ(read.repairs.at(cause).parts, repair.parts);
  }
  EXPECT_EQ(read.hour_costs, figures.hour_costs);
  for (const char* text : {"", "[]", "{}", R"({"checks":{"x":{}},"repairs":{}})"}) {
    std::ofstream(folder.figures()) << text;
    ASSERT_FALSE(read_figures(folder)) << text;
    EXPECT_EQ(read_figures(folder).error().code, ErrorCode::kDamagedIndex) << text;
  }
}

}  // namespace
}  // namespace shoplore::testing
