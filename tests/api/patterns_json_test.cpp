// Patterns as they are written: key by key, and what is null.
#include "api/wire/patterns_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/sample_patterns.hpp"

namespace shoplore::testing {
namespace {

using nlohmann::json;
using ::testing::ElementsAre;

std::vector<std::string> keys(const json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;  // sorted: plain json keeps them so
}

json written() {
  return json::parse(
      patterns_json(PatternBook(), pattern_list(), opened_patterns(), "7-x", pattern_words()));
}

TEST(PatternsJson, EveryKeyIsThereAndNoOther) {
  const json page = written();
  EXPECT_THAT(keys(page),
              ElementsAre("cases", "enough", "fewest_cases", "found", "matches", "most_chance",
                          "next_cursor", "patterns", "scope", "scope_cases", "tested"));
  EXPECT_THAT(keys(page["tested"][0]), ElementsAre("found", "kind", "tested"));
  for (const json& pattern : page["patterns"]) {
    EXPECT_THAT(keys(pattern), ElementsAre("cases", "cause", "holm", "items", "kind", "lift",
                                           "odds_ratio", "p", "q", "rest", "scope", "sentence",
                                           "share", "support", "vehicles", "work_sign"));
    EXPECT_THAT(keys(pattern["scope"]), ElementsAre("attribute", "name", "value"));
    EXPECT_THAT(keys(pattern["items"][0]), ElementsAre("attribute", "name", "value"));
  }
  EXPECT_THAT(keys(page["patterns"][0]["odds_ratio"]),
              ElementsAre("confidence", "half_added", "high", "low", "value"));
}

TEST(PatternsJson, SaysWhatItRestsOn) {
  const json page = written();
  EXPECT_EQ(page["matches"], 4);
  EXPECT_EQ(page["found"], 1'204);
  EXPECT_EQ(page["next_cursor"], "7-x");
  const json& first = page["patterns"][0];
  EXPECT_EQ(first["kind"], "cause");
  EXPECT_EQ(first["scope"]["name"], "engine family BW16D");
  EXPECT_EQ(first["share"]["count"], 50);
  EXPECT_EQ(first["rest"], json({{"count", 5}, {"out_of", 130}}));
  EXPECT_EQ(first["cases"], json({"case-1", "case-2"}));
  EXPECT_EQ(first["sentence"],
            "engine family BW16D, P0299, whistle under load: charge-air hose, split <long> in 50 "
            "of 56 cases, otherwise in 5 of 130");
}

TEST(PatternsJson, WhatAKindDoesNotHaveIsNull) {
  const json patterns = written()["patterns"];
  EXPECT_TRUE(patterns[0]["work_sign"].is_null());
  EXPECT_TRUE(patterns[1]["cause"].is_null());
  EXPECT_EQ(patterns[1]["work_sign"]["name"], "tape on a hose");
  for (const int limited : {2, 3}) {
    for (const char* key : {"rest", "support", "lift", "odds_ratio"}) {
      EXPECT_TRUE(patterns[static_cast<std::size_t>(limited)][key].is_null()) << key;
    }
  }
}

}  // namespace
}  // namespace shoplore::testing
