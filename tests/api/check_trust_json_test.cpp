// Trust in checks as it is written: key by key, and what is null.
#include "api/wire/check_trust_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

using nlohmann::json;
using ::testing::ElementsAre;

std::vector<std::string> keys(const json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;  // sorted: plain json keeps them so
}

CheckTrust sample() {
  CheckTrust trust;
  trust.check = "look";
  trust.done = 42;
  trust.unclear = 2;
  trust.mixed = 1;
  trust.pass = {24, 20, 0, 3, 1, {3, 23, jeffreys(3, 23)}};
  trust.fail = {15, 13, 0, 2, 0, {2, 15, jeffreys(2, 15)}};
  trust.tells_about_components = true;
  trust.table = {13, 2, 4, 20};
  trust.by_cause = {{"hose:split", true, 4, 13, 3, {4, 17, jeffreys(4, 17)}}};
  return trust;
}

json written(const CheckTrust& trust, const std::vector<ConditionTrust>& conditions = {}) {
  return json::parse(check_trust_json({trust}, conditions))["checks"][0];
}

TEST(CheckTrustJson, EveryKeyIsThereAndNoOther) {
  ConditionTrust cold{"look", "cold_start", {}, {}, 1};
  const json check = written(sample(), {cold});
  EXPECT_THAT(keys(check),
              ElementsAre("by_cause", "by_condition", "check", "done", "fail", "fail_against_cause",
                          "mixed", "pass", "tells_about_components", "unclear"));
  EXPECT_THAT(keys(check["pass"]),
              ElementsAre("borne_out", "given", "misled", "misled_us", "right", "unknown"));
  EXPECT_THAT(keys(check["fail_against_cause"]),
              ElementsAre("diagnostic_odds_ratio", "false_negative", "false_positive",
                          "negative_likelihood_ratio", "negative_predictive_value",
                          "positive_likelihood_ratio", "positive_predictive_value", "sensitivity",
                          "specificity", "true_negative", "true_positive"));
  EXPECT_THAT(keys(check["fail_against_cause"]["positive_likelihood_ratio"]),
              ElementsAre("confidence", "half_added", "high", "low", "value"));
  EXPECT_THAT(keys(check["by_cause"][0]), ElementsAre("against", "component", "fail", "failure",
                                                      "misled", "pass", "told_about"));
  EXPECT_THAT(keys(check["by_condition"][0]), ElementsAre("condition", "fail", "pass", "unclear"));
  EXPECT_THAT(keys(check["pass"]["misled_us"]), ElementsAre("count", "interval", "out_of"));
  EXPECT_THAT(keys(check["pass"]["misled_us"]["interval"]),
              ElementsAre("confidence", "high", "low"));
}

TEST(CheckTrustJson, SaysTheCountsItWasGiven) {
  const json check = written(sample());
  EXPECT_EQ(check["done"], 42);
  EXPECT_EQ(check["pass"]["given"], 24);
  EXPECT_EQ(check["pass"]["unknown"], 1);
  EXPECT_EQ(check["pass"]["misled_us"]["out_of"], 23);
  EXPECT_EQ(check["fail_against_cause"]["false_negative"], 4);
  EXPECT_EQ(check["fail_against_cause"]["sensitivity"]["count"], 13);
  EXPECT_EQ(check["fail_against_cause"]["sensitivity"]["out_of"], 17);
  EXPECT_NEAR(check["fail_against_cause"]["positive_likelihood_ratio"]["value"].get<double>(),
              (13.0 / 17) / (2.0 / 22), 1e-12);
  EXPECT_EQ(check["by_cause"][0]["component"], "hose");
  EXPECT_EQ(check["by_cause"][0]["failure"], "split");
}

TEST(CheckTrustJson, WhatCannotBeToldIsNull) {
  CheckTrust trust = sample();
  trust.table = {13, 0, 4, 0};
  const json one_column = written(trust)["fail_against_cause"];
  EXPECT_TRUE(one_column["positive_likelihood_ratio"].is_null());
  EXPECT_EQ(one_column["specificity"]["out_of"], 0);
  trust.tells_about_components = false;
  EXPECT_TRUE(written(trust)["fail_against_cause"].is_null());
}

TEST(CheckTrustJson, ConditionsStandUnderTheirOwnCheck) {
  ConditionTrust other{"round", "cold_start", {}, {}, 1};
  EXPECT_EQ(written(sample(), {other})["by_condition"], json::array());
  EXPECT_EQ(check_trust_json({}, {other}), R"({"checks":[]})");
}

}  // namespace
}  // namespace shoplore
