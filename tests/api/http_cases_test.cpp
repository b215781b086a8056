// Lists, histories and conditions of cases over HTTP.
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::expect_problem;
using HttpCases = testing::HttpShop;

std::vector<std::string> refs(const json& list) {
  std::vector<std::string> refs;
  for (const json& each : list["cases"]) refs.push_back(each["ref"]);
  return refs;
}

using Refs = std::vector<std::string>;

TEST_F(HttpCases, TheLastRecordedComesFirst) {
  EXPECT_EQ(refs(read("/v1/cases?limit=3")), (Refs{"old-8", "old-7", "old-6"}));
  EXPECT_EQ(read("/v1/cases")["next_cursor"], "");
}

TEST_F(HttpCases, PagesShowEveryCaseOnceWhileCasesAreRecorded) {
  Refs seen;
  std::string cursor;
  do {
    const json page = read("/v1/cases?limit=3" + (cursor.empty() ? "" : "&cursor=" + cursor));
    for (const std::string& ref : refs(page)) seen.push_back(ref);
    cursor = page["next_cursor"];
    ASSERT_EQ(post("/v1/cases", R"({"state":"open","opened":"2026-03-02"})")->status, 201);
  } while (!cursor.empty());
  EXPECT_EQ(seen, (Refs{"old-8", "old-7", "old-6", "old-5", "old-4", "old-3", "old-2", "old-1"}));
}

TEST_F(HttpCases, FiltersLeaveOutTheOthers) {
  const auto made = post("/v1/cases", R"({"ref":"new-1","state":"open","opened":"2026-03-02",
      "vehicle":{"make":"Cormont","engine_family":"CM12P"},"identity":{"plate":"QX19 ZZT"}})");
  ASSERT_TRUE(made && made->status == 201);
  const std::string token = json::parse(made->body)["record"]["vehicle"]["token"];
  struct Row {
    std::string query;
    Refs shown;
  };
  for (const auto& [query, shown] :
       std::vector<Row>{{"state=open", {"new-1"}},
                        {"state=open,waiting", {"new-1"}},
                        {"state=waiting", {}},
                        {"state=closed&limit=1", {"old-8"}},
                        {"state=open&state=closed&limit=2", {"new-1", "old-8"}},
                        {"make=cormont", {"new-1"}},
                        {"engine_family=cm12p", {"new-1"}},
                        {"make=Cormont&engine_family=BW16D", {}},
                        {"vehicle=" + token, {"new-1"}},
                        {"cause=charge_air_hose", {"old-8", "old-7"}},
                        {"cause=charge_air_hose:split", {"old-8", "old-7"}},
                        {"cause=charge_air_hose:worn", {}},
                        {"opened_since=2026-03-03", {}},
                        {"opened_since=2026-03-02&limit=1", {"new-1"}},
                        {"closed_since=2026-03-04&limit=1", {"old-8"}},
                        {"closed_since=2026-03-05", {}}}) {
    EXPECT_EQ(refs(read("/v1/cases?" + query)), shown) << query;
  }
}

TEST_F(HttpCases, AClosedCaseLeavesTheListOfOpenOnes) {
  const auto made = post("/v1/cases", R"({"state":"open","opened":"2026-03-02"})");
  const std::string path = made->get_header_value("Location");
  EXPECT_EQ(read("/v1/cases?state=open")["cases"].size(), 1U);
  ASSERT_EQ(
      post(path + "/close", R"({"cause":{"component":"turbocharger","failure":"worn"}})")->status,
      200);
  EXPECT_EQ(read("/v1/cases?state=open")["cases"].size(), 0U);
}

TEST_F(HttpCases, WrongQueriesAreRefusedByName) {
  struct Row {
    std::string path, place;
  };
  for (const auto& [path, place] :
       std::vector<Row>{{"/v1/cases?limit=201", "?limit"},
                        {"/v1/cases?cursor=x", "?cursor"},
                        {"/v1/cases?make=a&make=b", "?make"},
                        {"/v1/cases?state=", "?state"},
                        {"/v1/cases?cause=split", "?cause"},
                        {"/v1/cases?cause=charge_air_hose:none", "?cause"},
                        {"/v1/cases?cause=charge_air_hose:", "?cause"},
                        {"/v1/cases?vehicle=QX19ZZT", "?vehicle"},
                        {"/v1/cases?offset=3", "?offset"},
                        {"/v1/cases/old-1?asof=3", "?asof"},
                        {"/v1/cases/old-1?as_of=0", "?as_of"},
                        {"/v1/cases/old-1/history?full=1", "?full"},
                        {"/healthz?x=1", "?x"},
                        {"/openapi.json?x=1", "?x"}}) {
    expect_problem(get(path), 400, place);
  }
  const std::string cursor = read("/v1/cases?limit=1")["next_cursor"];
  expect_problem(get("/v1/cases?state=closed&limit=1&cursor=" + cursor), 400, "?cursor");
  expect_problem(post("/v1/cases?dry_run=true", R"({"state":"open","opened":"2026-03-02"})"), 400,
                 "?dry_run");
  EXPECT_EQ(read("/v1/cases")["cases"].size(), 8U) << "a refused case was recorded";
}

TEST_F(HttpCases, AHistoryTellsEveryChangeAndCanBeReadAsOfEach) {
  ASSERT_EQ(patch("/v1/cases/old-1", {}, R"({"notes":"one"})")->status, 200);
  ASSERT_EQ(patch("/v1/cases/old-1", {}, R"({"notes":"two","vehicle":{"fuel":null}})")->status,
            200);
  const json changes = read("/v1/cases/old-1/history?full=true")["changes"];
  ASSERT_EQ(changes.size(), 3U);
  EXPECT_EQ(changes[1]["changed"], json::parse(R"([{"place":"/notes","after":"one"}])"));
  EXPECT_EQ(changes[2]["changed"], json::parse(R"([{"place":"/vehicle/fuel","before":"diesel"},
                            {"place":"/notes","before":"one","after":"two"}])"));
  EXPECT_EQ(changes[0]["role"], "import");
  for (const json& change : changes) {
    const std::string revision = std::to_string(change["revision"].get<int>());
    const auto then = get("/v1/cases/old-1?as_of=" + revision);
    ASSERT_TRUE(then && then->status == 200);
    EXPECT_EQ(json::parse(then->body), change["record"]);
    EXPECT_EQ(then->get_header_value("ETag"), "\"" + revision + "\"");
  }
}

TEST_F(HttpCases, AHistoryGoesOnWhereAPageEnded) {
  for (const char* notes : {"one", "two", "three"}) {
    ASSERT_EQ(patch("/v1/cases/old-1", {}, json{{"notes", notes}}.dump())->status, 200);
  }
  json seen = json::array();
  std::string cursor;
  do {
    const json page =
        read("/v1/cases/old-1/history?limit=1" + (cursor.empty() ? "" : "&cursor=" + cursor));
    seen.insert(seen.end(), page["changes"].begin(), page["changes"].end());
    cursor = page["next_cursor"];
  } while (!cursor.empty());
  EXPECT_EQ(seen, read("/v1/cases/old-1/history")["changes"]);
  expect_problem(get("/v1/cases/none/history"), 404);
}

TEST_F(HttpCases, ACaseIsNotThereBeforeItWasRecorded) {
  expect_problem(get("/v1/cases/old-3?as_of=2"), 404, "old-3");
  EXPECT_EQ(read("/v1/cases/old-3?as_of=3")["ref"], "old-3");
}

TEST_F(HttpCases, AnUnchangedCaseIsNotSentAgain) {
  const auto first = get("/v1/cases/old-1");
  const std::string tag = first->get_header_value("ETag");
  for (const std::string& list : {tag, "W/" + tag, "\"x\", " + tag, std::string("*")}) {
    const auto again = get("/v1/cases/old-1", {{"If-None-Match", list}});
    ASSERT_TRUE(again) << list;
    EXPECT_EQ(again->status, 304) << list;
    EXPECT_EQ(again->body, "") << list;
    EXPECT_EQ(again->get_header_value("ETag"), tag) << list;
  }
  ASSERT_EQ(patch("/v1/cases/old-1", {}, R"({"notes":"x"})")->status, 200);
  EXPECT_EQ(get("/v1/cases/old-1", {{"If-None-Match", tag}})->status, 200);
}

TEST_F(HttpCases, ChangesAtOnceWithoutAConditionAllGetThrough) {
  std::vector<std::thread> threads;
  std::atomic<int> failures = 0;
  for (int t = 0; t < 4; ++t) {
    threads.emplace_back([&, t] {
      for (int i = 0; i < 10; ++i) {
        const json change = {{"facts", {{"t" + std::to_string(t), std::to_string(i)}}}};
        const auto reply = patch("/v1/cases/old-1", {}, change.dump());
        if (!reply || reply->status != 200) ++failures;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(failures, 0);
  EXPECT_EQ(read("/v1/cases/old-1")["facts"],
            json::parse(R"({"t0":"9","t1":"9","t2":"9","t3":"9"})"));
  EXPECT_EQ(read("/v1/cases/old-1/history")["changes"].size(), 41U);
}

TEST_F(HttpCases, APartOfACaseIsNeverSent) {
  const auto whole = get("/v1/cases/old-1");
  const auto part = get("/v1/cases/old-1", {{"Range", "bytes=0-9"}});
  ASSERT_TRUE(whole && part);
  EXPECT_EQ(part->status, 200);
  EXPECT_EQ(part->body, whole->body);
}

TEST_F(HttpCases, IfMatchTakesAListAndGuardsClosingToo) {
  const auto made = post("/v1/cases", R"({"state":"open","opened":"2026-03-02"})");
  const std::string path = made->get_header_value("Location");
  const std::string tag = made->get_header_value("ETag");
  EXPECT_EQ(patch(path, {{"If-Match", "\"1\", " + tag}}, R"({"notes":"x"})")->status, 200);
  const std::string closing = R"({"cause":{"component":"turbocharger","failure":"worn"}})";
  expect_problem(post(path + "/close", {{"If-Match", tag}}, closing), 412);
  EXPECT_EQ(post(path + "/close", {{"If-Match", "*"}}, closing)->status, 200);
}

}  // namespace
}  // namespace shoplore
