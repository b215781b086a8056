#include "api/wire/mileage_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "tests/query/failure_mileage/visit_lists.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::kLinkage;
using testing::vehicle_told;

std::set<std::string> keys(const json& object) {
  std::set<std::string> names;
  for (const auto& [name, value] : object.items()) names.insert(name);
  return names;
}

json answer_for(const std::vector<VehicleHistory>& histories) {
  const auto vocabulary = Vocabulary::built_in();
  const auto answer = failure_mileage(histories, {kLinkage, {"Brackwater", ""}});
  EXPECT_TRUE(answer) << describe(answer.error());
  return json::parse(mileage_json(*answer));
}

std::vector<VehicleHistory> five_failed_five_whole() {
  std::vector<VehicleHistory> histories;
  for (std::int64_t i = 0; i < 10; ++i) {
    const bool failed = i % 2 == 0;
    histories.push_back(
        vehicle_told("bw16d", {{"service", 10'000},
                               {failed ? kLinkage : "service", 60'000 + 5'000 * i,
                                failed ? std::vector<std::string>{"replace wastegate_linkage"}
                                       : std::vector<std::string>{}},
                               {"service", 120'000}}));
  }
  return histories;
}

TEST(MileageJson, HasTheseFields) {
  const json answer = answer_for(five_failed_five_whole());
  using Names = std::set<std::string>;
  EXPECT_EQ(keys(answer),
            (Names{"component", "failure", "make", "engine_family", "cases", "engine_families",
                   "vehicles", "from_first_visit", "replaced_here", "since_replaced"}));
  EXPECT_EQ(keys(answer["cases"]),
            (Names{"count", "beside_main", "mileage_known", "quartiles_km"}));
  EXPECT_EQ(keys(answer["cases"]["quartiles_km"]),
            (Names{"least", "quarter", "half", "three_quarters", "greatest"}));
  EXPECT_EQ(keys(answer["vehicles"]),
            (Names{"in_scope", "without_part", "family_unknown", "no_km", "backwards",
                   "failed_at_first", "no_distance", "followed"}));
  const Names life{"lives",   "failures",  "km_at_risk", "longest_km", "starts_km", "curve",
                   "weibull", "lognormal", "better",     "lead",       "not_fitted"};
  EXPECT_EQ(keys(answer["from_first_visit"]), life);
  EXPECT_EQ(keys(answer["since_replaced"]), life);
  const json& first = answer["from_first_visit"];
  EXPECT_EQ(keys(first["curve"][0]),
            (Names{"km", "at_risk", "failed", "survival", "standard_error", "low", "high"}));
  EXPECT_EQ(keys(first["weibull"]),
            (Names{"shape", "scale_km", "b10_km", "b50_km", "log_likelihood", "hazard"}));
  EXPECT_EQ(keys(first["lognormal"]),
            (Names{"log_mean", "log_deviation", "b10_km", "b50_km", "log_likelihood"}));
  EXPECT_EQ(keys(first["weibull"]["b10_km"]),
            (Names{"value", "low", "high", "confidence", "told"}));
  EXPECT_EQ(keys(first["weibull"]["shape"]), (Names{"value", "low", "high", "confidence"}));
}

TEST(MileageJson, SaysWhatWasCounted) {
  const json answer = answer_for(five_failed_five_whole());
  EXPECT_EQ(answer["component"], "wastegate_linkage");
  EXPECT_EQ(answer["failure"], "seized_open");
  EXPECT_EQ(answer["make"], "Brackwater");
  EXPECT_EQ(answer["engine_families"], json::array({"bw16d"}));
  EXPECT_EQ(answer["cases"]["count"], 5);
  EXPECT_EQ(answer["cases"]["quartiles_km"]["half"], 80'000);
  EXPECT_EQ(answer["vehicles"]["followed"], 10);
  EXPECT_EQ(answer["from_first_visit"]["failures"], 5);
  EXPECT_EQ(answer["from_first_visit"]["starts_km"], 10'000);
  EXPECT_EQ(answer["replaced_here"], 5);
  EXPECT_EQ(answer["since_replaced"]["lives"], 5);
  EXPECT_EQ(answer["since_replaced"]["failures"], 0);
  EXPECT_TRUE(answer["since_replaced"]["weibull"].is_null());
  EXPECT_NE(answer["since_replaced"]["not_fitted"], "");
}

TEST(MileageJson, WhatIsNotKnownIsNull) {
  const json answer = answer_for({vehicle_told("bw16d", {{"service", 10'000}})});
  EXPECT_EQ(answer["cases"]["count"], 0);
  EXPECT_TRUE(answer["cases"]["quartiles_km"].is_null());
  EXPECT_TRUE(answer["since_replaced"].is_null());
  for (const char* name : {"weibull", "lognormal", "better", "lead"}) {
    EXPECT_TRUE(answer["from_first_visit"][name].is_null()) << name;
  }
}

}  // namespace
}  // namespace shoplore
