// What is seen more often lately, and the metrics, over HTTP.
#include <fstream>

#include "tests/api/http_shop.hpp"
#include "tests/api/lately_months.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::expect_problem;
using HttpLately = testing::HttpShop;

TEST_F(HttpLately, AnImportMakesItAnew) {
  const auto before = get("/v1/lately");
  ASSERT_TRUE(before && before->status == 200);
  ASSERT_EQ(shop_.run({"import"}, testing::months_of_cases(2, 9)).exit_code, 0);
  const auto after = get("/v1/lately");
  ASSERT_TRUE(after && after->status == 200);
  const json was = json::parse(before->body), is = json::parse(after->body);
  EXPECT_GT(is["revision"], was["revision"]);
  EXPECT_GT(is["cases"], was["cases"]);
  EXPECT_TRUE(is["enough_to_compare"]);
}

TEST_F(HttpLately, ADamagedFileIsMadeAnew) {
  ASSERT_TRUE(get("/v1/lately"));
  std::ofstream(shop_.folder() / "lately.json") << "half a fi";
  const auto reply = get("/v1/lately");
  ASSERT_TRUE(reply && reply->status == 200);
  EXPECT_TRUE(json::parse(reply->body).contains("rows"));
}

TEST_F(HttpLately, ParametersAreRefused) {
  expect_problem(get("/v1/lately?months=3"), 400, "?months");
  expect_problem(get("/metrics?name=x"), 400, "?name");
}

TEST_F(HttpLately, MetricsCountWhatWasAsked) {
  ASSERT_TRUE(get("/healthz"));
  ASSERT_TRUE(get("/v1/cases/none"));
  ASSERT_TRUE(get("/v1/nowhere/at/all"));
  const auto reply = get("/metrics");
  ASSERT_TRUE(reply && reply->status == 200);
  EXPECT_EQ(reply->get_header_value("Content-Type"), "text/plain; version=0.0.4; charset=utf-8");
  for (const char* line :
       {"shoplore_cases 8\n", "shoplore_index_lag_revisions 0\n",
        "shoplore_requests_total{method=\"GET\",route=\"/healthz\",status=\"2xx\"} 1\n",
        "shoplore_requests_total{method=\"GET\",route=\"/v1/cases/{ref}\",status=\"4xx\"} 1\n",
        "shoplore_requests_total{method=\"other\",route=\"other\",status=\"4xx\"} 1\n"}) {
    EXPECT_NE(reply->body.find(line), std::string::npos) << line << reply->body;
  }
  EXPECT_EQ(get("/metrics")->body.find("route=\"/metrics\""), std::string::npos);
}

}  // namespace
}  // namespace shoplore
