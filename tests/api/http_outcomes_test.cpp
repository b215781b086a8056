// A vehicle brought back, over HTTP: recognised, linked, counted anew.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <thread>

#include "tests/api/back_again.hpp"
#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::expect_problem;
using ::testing::HasSubstr;

class HttpOutcomes : public testing::HttpShop {
 protected:
  void record(const std::string& text) const {
    const auto reply = post("/v1/cases", text);
    ASSERT_TRUE(reply && reply->status == 201) << reply->body;
  }
  // Cases by cause component once everything recorded is answered from.
  std::map<std::string, int> seen() const {
    while (read("/healthz")["answering_as_of"] != read("/healthz")["revision"]) {
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    std::map<std::string, int> counts;
    const json answer =
        json::parse(post("/v1/ask", R"({"text":"P0299 lack of power","rows":50})")->body);
    for (const json& row : answer["likely_causes"]) counts[row["component"]] = row["seen"];
    return counts;
  }
};

TEST_F(HttpOutcomes, AVehicleBroughtBackIsRecognisedLinkedAndCountedAnew) {
  record(testing::kTurboPutIn);
  record(testing::kBackAgain);
  const json comeback = read("/v1/cases/back-1/comeback");
  ASSERT_EQ(comeback["offers"].size(), 1U);
  EXPECT_EQ(comeback["offers"][0]["ref"], "turbo-1");
  EXPECT_EQ(comeback["offers"][0]["days_since"], 60);
  EXPECT_EQ(comeback["offers"][0]["km_since"], 4'100);

  const httplib::Headers key{{"Idempotency-Key", "\"close-1\""}};
  const auto closed = post("/v1/cases/back-1/close", key, "{" + testing::kFound + "}");
  ASSERT_TRUE(closed && closed->status == 200) << closed->body;
  const json warnings = json::parse(closed->body)["warnings"];
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].get<std::string>(), HasSubstr("turbo-1, 60 days"));
  EXPECT_THAT(warnings[0].get<std::string>(), HasSubstr("POST /v1/cases/turbo-1/outcome"));

  const auto before = seen();
  ASSERT_EQ(before.at("turbocharger"), 1);
  const std::string report = R"({"status":"came_back","of":"back-1","reason":"wrong_cause"})";
  const auto linked = post("/v1/cases/turbo-1/outcome", report);
  ASSERT_TRUE(linked && linked->status == 200) << linked->body;
  EXPECT_EQ(json::parse(linked->body)["record"]["cause"]["component"], "wastegate_linkage");
  const auto after = seen();
  EXPECT_FALSE(after.contains("turbocharger"));
  EXPECT_EQ(after.at("wastegate_linkage"), before.at("wastegate_linkage") + 1);
  EXPECT_EQ(read("/v1/cases/back-1")["follows"], "turbo-1");
  EXPECT_EQ(read("/v1/cases/back-1/comeback")["offers"].size(), 0U);

  const auto repeated = post("/v1/cases/back-1/close", key, "{" + testing::kFound + "}");
  EXPECT_EQ(repeated->body, closed->body) << "word for word, though it is linked now";
}

TEST_F(HttpOutcomes, WhatIsDueGoesOnceSomethingIsHeard) {
  record(testing::kTurboPutIn);
  EXPECT_EQ(read("/v1/outcomes/due")["due"][0]["ref"], "turbo-1");
  const auto stayed =
      post("/v1/cases/turbo-1/outcome", R"({"status":"stayed_fixed","as_of":"2026-06-01"})");
  ASSERT_EQ(stayed->status, 200) << stayed->body;
  EXPECT_EQ(read("/v1/outcomes/due")["all"], 0);
}

TEST_F(HttpOutcomes, ADemandedRevisionIsKept) {
  record(testing::kTurboPutIn);
  const std::string tag = get("/v1/cases/turbo-1")->get_header_value("ETag");
  const std::string stayed = R"({"status":"stayed_fixed","as_of":"2026-06-01"})";
  EXPECT_EQ(post("/v1/cases/turbo-1/outcome", {{"If-Match", tag}}, stayed)->status, 200);
  expect_problem(post("/v1/cases/turbo-1/outcome", {{"If-Match", tag}}, R"({"status":"unknown"})"),
                 412, "turbo-1");
}

TEST_F(HttpOutcomes, WhatCannotBeIsRefusedByName) {
  record(testing::kTurboPutIn);
  record(testing::kBackAgain);
  struct Row {
    std::string ref, body;
    int status;
    std::string place;
  };
  for (const auto& [ref, body, status, place] : std::vector<Row>{
           {"nobody", R"({"status":"unknown"})", 404, "nobody"},
           {"back-1", R"({"status":"stayed_fixed"})", 400, "back-1"},
           {"turbo-1", "{}", 400, "/status"},
           {"turbo-1", R"({"status":"gone"})", 400, "/status"},
           {"turbo-1", R"({"status":"unknown","when":"now"})", 400, "/when"},
           {"turbo-1", R"({"status":"stayed_fixed","as_of":"2026-03-03"})", 400, "/as_of"},
           {"turbo-1", R"({"status":"stayed_fixed","mileage_km":1})", 400, "/mileage_km"},
           {"turbo-1", R"({"status":"came_back","of":"nobody"})", 404, "nobody"},
           {"turbo-1", R"({"status":"came_back","reason":"wrong_cause"})", 400, "/cause"}}) {
    expect_problem(post("/v1/cases/" + ref + "/outcome", body), status, place);
  }
  expect_problem(get("/v1/cases/nobody/comeback"), 404, "nobody");
  expect_problem(get("/v1/outcomes/due?limit=0"), 400, "?limit");
}

}  // namespace
}  // namespace shoplore
