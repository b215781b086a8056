// What a server answers when this machine, not the caller, must mend something.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/file.h>
#include <unistd.h>

#include <chrono>
#include <thread>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using testing::expect_problem;
using HttpBroken = testing::HttpShop;

TEST_F(HttpBroken, DamagedRecordsAreAnErrorOfTheServer) {
  sqlite3* database = nullptr;
  ASSERT_EQ(sqlite3_open((shop_.folder() / "records.db").c_str(), &database), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(database, "UPDATE change SET body = 'garbage' WHERE revision = 8", nullptr,
                         nullptr, nullptr),
            SQLITE_OK);
  sqlite3_close(database);
  for (const char* path : {"/v1/cases/old-8", "/v1/cases", "/v1/cases/old-8/history"}) {
    expect_problem(get(path), 500);
  }
  expect_problem(patch("/v1/cases/old-8", {}, R"({"notes":"x"})"), 500);
  EXPECT_EQ(get("/v1/cases/old-7")->status, 200) << "the others can be read";
}

// Somebody else holds the index for longer than the server is patient.
TEST_F(HttpBroken, AnIndexThatDoesNotFollowIsSaidAndMends) {
  const int lock = open((shop_.folder() / "index" / "lock").c_str(), O_RDWR);
  ASSERT_GE(lock, 0);
  ASSERT_EQ(flock(lock, LOCK_EX), 0);
  ASSERT_EQ(post("/v1/cases", R"({"state":"open","opened":"2026-03-02"})")->status, 201);
  const auto health_is = [&](int status) {
    for (int tries = 0; tries < 600; ++tries) {
      const auto reply = get("/healthz");
      if (reply && reply->status == status) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    return false;
  };
  EXPECT_TRUE(health_is(503));
  const auto reply = get("/healthz");
  expect_problem(reply, 503);
  EXPECT_EQ(reply->get_header_value("Retry-After"), "1");
  close(lock);
  EXPECT_TRUE(health_is(200));
}

}  // namespace
}  // namespace shoplore
