// The JSON form of what is seen more often lately: its very keys, read without our own decoder.
#include "api/wire/lately_json.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

namespace shoplore {
namespace {

using nlohmann::json;

std::set<std::string> keys(const json& object) {
  std::set<std::string> found;
  for (const auto& [key, unused] : object.items()) found.insert(key);
  return found;
}

Lately sample() {
  MonthlyCounts counts;
  counts.first = std::chrono::year(2022) / 1;
  std::vector<std::uint32_t> pump(48, 3), family(48, 20), pair(48);
  for (std::size_t month = 45; month < 48; ++month) pump[month] = 10;
  pair[46] = kShownPairing;
  counts.causes = {{"pump:seized", "", pump, 0},
                   {"rest:worn", "", std::vector<std::uint32_t>(48, 100), 0}};
  counts.pairs = {{"pump:seized", "bw16d", pair, 0}};
  counts.families = {{"", "bw16d", family, 0}};
  for (const std::uint32_t count : pump) counts.cases.push_back(count + 100);
  return lately(counts);
}

TEST(LatelyJson, HasTheKeysItPromises) {
  const json whole = json::parse(lately_json(sample()));
  EXPECT_EQ(keys(whole),
            (std::set<std::string>{"months", "cases", "cases_lately", "tested", "enough_to_compare",
                                   "shown_at", "rows", "pairings"}));
  EXPECT_EQ(whole["months"], (json{{"first", "2022-01"}, {"last", "2025-12"}}));
  EXPECT_EQ(whole["cases_lately"][0], (json{{"months", 3}, {"cases", 330}}));
  const auto& rows = whole["rows"];
  const json row = *std::find_if(rows.begin(), rows.end(), [](const json& each) {
    return each["component"] == "pump" && each["engine_family"].is_null();
  });
  EXPECT_EQ(keys(row), (std::set<std::string>{"component", "failure", "engine_family", "change",
                                              "season", "windows", "sum_above", "same_three_months",
                                              "by_month", "usual_by_month"}));
  EXPECT_EQ(row["component"], "pump");
  EXPECT_EQ(row["failure"], "seized");
  EXPECT_TRUE(row["engine_family"].is_null());
  EXPECT_EQ(row["change"], "risen");
  EXPECT_EQ(row["sum_above"]["began"], "2025-10");
  EXPECT_EQ(keys(row["windows"][0]), (std::set<std::string>{"months", "cases", "before", "expected",
                                                            "a_month", "ratio", "p", "q"}));
  EXPECT_EQ(keys(row["windows"][0]["a_month"]),
            (std::set<std::string>{"cases", "low", "high", "confidence"}));
  EXPECT_EQ(row["windows"][0]["cases"], 30);
  EXPECT_EQ(keys(whole["pairings"][0]),
            (std::set<std::string>{"component", "failure", "engine_family", "cases", "first",
                                   "of_the_failure_before", "of_the_family_before"}));
}

// 5 cases in the window and none before: a ratio without end.
TEST(LatelyJson, WhatHasNoEndIsNull) {
  const json whole = json::parse(lately_json(sample()));
  for (const json& row : whole["rows"]) {
    if (row["engine_family"] != "bw16d") continue;
    EXPECT_TRUE(row["windows"][0]["ratio"]["value"].is_null());
    EXPECT_TRUE(row["windows"][0]["ratio"]["high"].is_null());
    EXPECT_TRUE(row["windows"][0]["ratio"]["low"].is_number());
    EXPECT_TRUE(row["sum_above"].is_null());
    return;
  }
  FAIL() << "the pair is missing";
}

TEST(LatelyJson, WithoutCasesThereAreNoMonths) {
  const json whole = json::parse(lately_json({}));
  EXPECT_TRUE(whole["months"].is_null());
  EXPECT_EQ(whole["enough_to_compare"], false);
  EXPECT_TRUE(whole["rows"].empty());
}

}  // namespace
}  // namespace shoplore
