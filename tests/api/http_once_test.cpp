// Requests sent again under their Idempotency-Key, over HTTP: done once, whatever happens between.
#include <gtest/gtest.h>
#include <signal.h>
#include <sqlite3.h>

#include <chrono>
#include <thread>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::expect_problem;

constexpr const char* kCase = R"({"state":"open","opened":"2026-03-02","complaint":"flat",
    "identity":{"vin":"1G4AH59H45G118331","customer":"Quillborough"}})";

class HttpOnce : public testing::HttpShop {
 protected:
  static httplib::Headers key(const std::string& name) {
    return {{"Idempotency-Key", "\"" + name + "\""}};
  }
  std::size_t cases() const { return read("/healthz")["cases"]; }
};

void expect_repeated(const httplib::Result& first, const httplib::Result& again) {
  ASSERT_TRUE(first && again);
  EXPECT_EQ(first->get_header_value("Shoplore-Repeated"), "");
  EXPECT_EQ(again->get_header_value("Shoplore-Repeated"), "true");
  EXPECT_EQ(first->status, again->status);
  EXPECT_EQ(first->body, again->body);
  for (const char* name : {"ETag", "Location", "Content-Type"}) {
    EXPECT_EQ(first->get_header_value(name), again->get_header_value(name)) << name;
  }
}

TEST_F(HttpOnce, ACaseSentAgainIsRecordedOnceAndAnsweredAlike) {
  const auto first = post("/v1/cases", key("a"), kCase);
  ASSERT_TRUE(first && first->status == 201) << first->body;
  ASSERT_EQ(json::parse(first->body)["warnings"].size(), 1U) << "the VIN's check character";
  const std::string path = first->get_header_value("Location");
  ASSERT_EQ(patch(path, {}, R"({"notes":"meanwhile"})")->status, 200);
  expect_repeated(first, post("/v1/cases", key("a"), kCase));
  EXPECT_EQ(cases(), 9U);
}

TEST_F(HttpOnce, AChangeAndAClosingSentAgainAreDoneOnce) {
  const std::string path = post("/v1/cases", kCase)->get_header_value("Location");
  const auto changed = patch(path, key("b"), R"({"notes":"x"})");
  const std::string closing = R"({"cause":{"component":"turbocharger","failure":"worn"}})";
  const auto closed = post(path + "/close", key("c"), closing);
  ASSERT_TRUE(closed && closed->status == 200) << closed->body;
  expect_repeated(changed, patch(path, key("b"), R"({"notes":"x"})"));
  expect_repeated(closed, post(path + "/close", key("c"), closing));
  EXPECT_EQ(read(path + "/history")["changes"].size(), 3U);
}

TEST_F(HttpOnce, ASecondRequestUnderAKeyIsRefused) {
  ASSERT_EQ(post("/v1/cases", key("a"), kCase)->status, 201);
  const std::string other = R"({"state":"open","opened":"2026-03-03"})";
  expect_problem(post("/v1/cases", key("a"), other), 422, "Idempotency-Key");
  expect_problem(patch("/v1/cases/old-1", key("a"), R"({"notes":"x"})"), 422, "Idempotency-Key");
  auto with_condition = key("b");
  ASSERT_EQ(patch("/v1/cases/old-1", with_condition, R"({"notes":"x"})")->status, 200);
  with_condition.emplace("If-Match", "\"1\"");
  expect_problem(patch("/v1/cases/old-1", with_condition, R"({"notes":"x"})"), 422);
  EXPECT_EQ(cases(), 9U);
}

TEST_F(HttpOnce, KeysOfAnotherFormAreRefused) {
  for (const std::string& bad :
       {std::string("bare"), std::string("\"\""), std::string("\"a"), std::string("a\""),
        std::string("\"a\"b\""), std::string("\"a\", \"b\""), std::string("\"caf\xc3\xa9\""),
        std::string("\"a\\\""), std::string("\"\\n\""), "\"" + std::string(129, 'x') + "\""}) {
    expect_problem(post("/v1/cases", {{"Idempotency-Key", bad}}, kCase), 400, "Idempotency-Key");
  }
  expect_problem(
      post("/v1/cases", {{"Idempotency-Key", "\"a\""}, {"Idempotency-Key", "\"a\""}}, kCase), 400);
  EXPECT_EQ(cases(), 8U);
  EXPECT_EQ(post("/v1/cases", key(std::string(128, 'x')), kCase)->status, 201);
  EXPECT_EQ(post("/v1/cases", key("a \\\"quoted\\\" \\\\ key"), kCase)->status, 201);
}

TEST_F(HttpOnce, ARefusedRequestIsTriedAnew) {
  const std::string body = R"({"ref":"new-1","state":"closed","opened":"2026-03-02"})";
  expect_problem(post("/v1/cases", key("a"), body), 400);
  expect_problem(post("/v1/cases", key("a"), body), 400);
  EXPECT_EQ(post("/v1/cases", key("a"), kCase)->status, 201) << "the key is still free";
}

// The file is locked by this test, so the first request is under way for as long as it likes.
TEST_F(HttpOnce, WhileTheFirstIsUnderWayTheSecondIsToldSo) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open((shop_.folder() / "records.db").c_str(), &database), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(database, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
  int first_status = 0;
  std::thread first([&] {
    auto patient = client();
    patient.set_read_timeout(30);
    do {  // the other may hold the key for its moment
      const auto reply = patient.Post("/v1/cases", key("a"), kCase, testing::kJson);
      first_status = reply ? reply->status : -1;
    } while (first_status == 409);
  });
  httplib::Result second = post("/v1/cases", key("a"), "{}");  // any request under the key will do
  for (int tries = 0; tries < 200 && second && second->status != 409; ++tries) {
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
    second = post("/v1/cases", key("a"), "{}");
  }
  sqlite3_exec(database, "ROLLBACK", nullptr, nullptr, nullptr);
  sqlite3_close(database);
  first.join();
  expect_problem(second, 409, "Idempotency-Key");
  ASSERT_TRUE(second);
  EXPECT_EQ(second->get_header_value("Retry-After"), "1");
  EXPECT_EQ(first_status, 201);
  EXPECT_EQ(post("/v1/cases", key("a"), kCase)->get_header_value("Shoplore-Repeated"), "true");
  EXPECT_EQ(cases(), 9U);
}

TEST_F(HttpOnce, ManyAtOnceUnderOneKeyMakeOneCase) {
  std::vector<std::thread> threads;
  std::vector<int> statuses(8);
  for (std::size_t i = 0; i < statuses.size(); ++i) {
    threads.emplace_back([&, i] {
      do {
        const auto reply = post("/v1/cases", key("a"), kCase);
        statuses[i] = reply ? reply->status : -1;
      } while (statuses[i] == 409);
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(statuses, std::vector<int>(8, 201));
  EXPECT_EQ(cases(), 9U);
}

TEST_F(HttpOnce, AKeyOutlivesTheServer) {
  const auto first = post("/v1/cases", key("a"), kCase);
  ASSERT_EQ(server_->stop_with(SIGKILL).exit_code, 128 + SIGKILL);
  start();
  expect_repeated(first, post("/v1/cases", key("a"), kCase));
  EXPECT_EQ(cases(), 9U);
}

}  // namespace
}  // namespace shoplore
