// Patterns over HTTP.
#include <gtest/gtest.h>

#include <chrono>
#include <thread>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::closed_case;
using testing::expect_problem;

class HttpPatterns : public testing::HttpShop {
 protected:
  void fill() {
    std::string lines;
    for (int i = 0; i < 60; ++i) {
      const std::string number = std::to_string(i);
      lines += closed_case("hose-" + number, "charge_air_hose", "split", "present") + "\n";
      lines += closed_case("link-" + number, "wastegate_linkage", "seized_open", "absent") + "\n";
    }
    ASSERT_EQ(shop_.run({"import", "-"}, lines).exit_code, 0);
    wait_until_answering();
  }

  void wait_until_answering() {
    for (int tries = 0; tries < 200; ++tries) {
      const json health = read("/healthz");
      if (health["answering_as_of"] == health["revision"]) return;
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
    FAIL() << "the server does not follow";
  }
};

TEST_F(HttpPatterns, SaysWhatTheCommandLineSays) {
  fill();
  const auto reply = get("/v1/patterns?engine_family=BW16D&limit=200");
  ASSERT_TRUE(reply && reply->status == 200) << reply->body;
  EXPECT_EQ(reply->body + "\n",
            shop_.run({"patterns", "--engine-family", "BW16D", "--all", "--json"}).out);
}

TEST_F(HttpPatterns, PagesOfOneAreThePageOfAll) {
  fill();
  json seen = json::array();
  std::string cursor;
  do {
    const json page = read("/v1/patterns?limit=1" + (cursor.empty() ? "" : "&cursor=" + cursor));
    seen.insert(seen.end(), page["patterns"].begin(), page["patterns"].end());
    cursor = page["next_cursor"];
  } while (!cursor.empty());
  EXPECT_GT(seen.size(), 1U);
  EXPECT_EQ(seen, read("/v1/patterns?limit=200")["patterns"]);
}

TEST_F(HttpPatterns, ACursorOfEarlierRecordsIsRefused) {
  fill();
  const std::string cursor = read("/v1/patterns?limit=1")["next_cursor"];
  ASSERT_NE(cursor, "");
  ASSERT_TRUE(post("/v1/cases", closed_case("one-more", "charge_air_hose", "split", "present")));
  wait_until_answering();
  expect_problem(get("/v1/patterns?limit=1&cursor=" + cursor), 400, "?cursor");
}

TEST_F(HttpPatterns, FewCasesHaveNoneAndMistakesAreNamed) {
  const json page = read("/v1/patterns");
  EXPECT_EQ(page["enough"], false);
  EXPECT_EQ(page["patterns"], json::array());
  const std::pair<const char*, const char*> rows[] = {{"?engine_family=XX99", "?engine_family"},
                                                      {"?make=Nosuch", "?make"},
                                                      {"?cause=charge_air_hose", "?cause"},
                                                      {"?cause=flux:split", "?cause"},
                                                      {"?limit=0", "?limit"}};
  for (const auto& [query, place] : rows) {
    expect_problem(get(std::string("/v1/patterns") + query), 400, place);
  }
}

}  // namespace
}  // namespace shoplore
