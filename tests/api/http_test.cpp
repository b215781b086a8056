// The server as a program meets it: the same answers as `--json`, problem details for everything
// refused, and that nothing refused leaves a trace.
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <signal.h>
#include <sys/socket.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <functional>
#include <memory>
#include <thread>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using Clock = std::chrono::steady_clock;

using testing::expect_problem;
using testing::kJson;
using testing::kPatch;
using Http = testing::HttpShop;

TEST_F(Http, AnswersAsTheCommandLineDoes) {
  for (const char* text :
       {"2016 Brackwater Tidal BW16D 142k km P0299 flat uphill, no whistle", "P0299", "zzzz"}) {
    const auto reply = post("/v1/ask", json{{"text", text}}.dump());
    ASSERT_TRUE(reply);
    EXPECT_EQ(reply->status, 200) << reply->body;
    EXPECT_EQ(reply->get_header_value("Content-Type"), kJson);
    EXPECT_EQ(reply->body + "\n", shop_.run({"ask", text, "--json"}).out);
  }
}

TEST_F(Http, FiltersAndRowsAreThoseOfTheCommandLine) {
  const auto reply = post("/v1/ask", R"({"text":"P0299","rows":1,"similar_cases":2,
      "filter":{"make":"Brackwater","model_year":{"low":2014,"high":2018},"proof":["seen"]}})");
  ASSERT_TRUE(reply);
  EXPECT_EQ(reply->body + "\n",
            shop_
                .run({"ask", "P0299", "--rows", "1", "--similar-cases", "2", "--make", "Brackwater",
                      "--year", "2014..2017", "--proof", "seen", "--json"})
                .out);
}

TEST_F(Http, RefusesBadCasesAndStoresNothing) {
  const std::string before = shop_.exported();
  for (const auto& bad : testing::bad_cases()) {
    SCOPED_TRACE(bad.name);
    const auto reply = post("/v1/cases", bad.json);
    expect_problem(reply, bad.status);
    if (!reply) continue;
    EXPECT_NE(reply->body.find(bad.place), std::string::npos) << reply->body;
    EXPECT_NE(reply->body.find(bad.reason), std::string::npos) << reply->body;
  }
  EXPECT_EQ(shop_.exported(), before);
}

TEST_F(Http, RefusesBadQuestions) {
  for (const auto& bad : testing::bad_questions()) {
    SCOPED_TRACE(bad.name);
    expect_problem(post("/v1/ask", json{{"text", bad.text}}.dump()), 400);
  }
  expect_problem(post("/v1/ask", R"({"text":"flat","colour":1})"), 400);
  expect_problem(post("/v1/ask", "{\"text\":\"caf\xe9\"}"), 400);
  expect_problem(post("/v1/ask", ""), 400);
}

TEST_F(Http, RefusesWhatIsNoRoute) {
  expect_problem(client().Get("/v1/nothing"), 404);
  expect_problem(client().Get("/v1/cases/"), 404);
  expect_problem(client().Get("/v1/cases/none"), 404);
  expect_problem(client().Get("/v1/cases/%0a%ff"), 404);
  expect_problem(client().Get("/v1/cases/..%2f..%2fkey"), 404);
  expect_problem(post("/v1/ask", R"({"text":"flat"})", "text/plain"), 415);
  const auto wrong_patch = client().Patch("/v1/cases/old-1", "{}", kJson);
  expect_problem(wrong_patch, 415);
  EXPECT_EQ(wrong_patch->get_header_value("Accept-Patch"), kPatch);
}

TEST_F(Http, AWrongMethodSaysWhatIsAllowed) {
  const auto reply = client().Delete("/v1/cases/old-1");
  expect_problem(reply, 405);
  EXPECT_EQ(reply->get_header_value("Allow"), "GET, HEAD, PATCH");
  const auto get = client().Get("/v1/ask");
  expect_problem(get, 405);
  EXPECT_EQ(get->get_header_value("Allow"), "POST");
}

TEST_F(Http, AnswersForLoopbackNamesOnly) {
  expect_problem(client().Get("/healthz", {{"Host", "shop.example"}}), 421);
  const auto local = client().Get("/healthz", {{"Host", "localhost:1"}});
  ASSERT_TRUE(local);
  EXPECT_EQ(local->status, 200);
}

TEST_F(Http, ACaseLivesFromOpeningToClosing) {
  const auto made = post("/v1/cases", R"({"state":"open","opened":"2026-03-02",
      "complaint":"flat","identity":{"plate":"AB 12 CDE"}})");
  ASSERT_TRUE(made);
  ASSERT_EQ(made->status, 201) << made->body;
  const std::string path = made->get_header_value("Location");
  const std::string tag = made->get_header_value("ETag");

  const auto read = client().Get(path.c_str());
  ASSERT_TRUE(read);
  EXPECT_EQ(read->get_header_value("ETag"), tag);
  EXPECT_EQ(json::parse(read->body)["complaint"], "flat");
  EXPECT_EQ(read->body.find("CDE"), std::string::npos);

  const httplib::Headers if_match = {{"If-Match", tag}};
  const auto changed = client().Patch(path.c_str(), if_match, R"({"notes":"x"})", kPatch);
  ASSERT_TRUE(changed);
  EXPECT_EQ(changed->status, 200) << changed->body;
  expect_problem(client().Patch(path.c_str(), if_match, R"({"notes":"y"})", kPatch), 412);
  expect_problem(client().Patch(path.c_str(), {{"If-Match", "W/\"1\""}}, "{}", kPatch), 412);

  expect_problem(post(path + "/close", "{}"), 400);
  const auto closed = post(path + "/close", R"({"closed":"2026-03-04",
      "cause":{"component":"wastegate_linkage","failure":"seized_open","proof":"seen"}})");
  ASSERT_TRUE(closed);
  EXPECT_EQ(closed->status, 200) << closed->body;
  EXPECT_EQ(json::parse(closed->body)["record"]["state"], "closed");
}

// Seconds until the question is counted over so many cases; 5 when it never is.
double seconds_until(const std::function<bool()>& true_at_last) {
  const auto begin = Clock::now();
  const auto passed = [begin] {
    return std::chrono::duration<double>(Clock::now() - begin).count();
  };
  while (!true_at_last() && passed() < 5) std::this_thread::sleep_for(std::chrono::milliseconds(5));
  return passed();
}

// Half a second is the promise; a loaded test machine gets as much again.
constexpr double kPromised = 1.0;

TEST_F(Http, AnAcknowledgedCaseIsAnswerableSoon) {
  for (int i = 1; i <= 3; ++i) {
    const std::string ref = "new-" + std::to_string(i);
    const auto made =
        post("/v1/cases", testing::closed_case(ref, "charge_air_hose", "split", "present"));
    ASSERT_TRUE(made);
    ASSERT_EQ(made->status, 201) << made->body;
    EXPECT_LT(seconds_until([&] { return ask("P0299")["cases_in_records"] == 8 + i; }), kPromised);
  }
}

TEST_F(Http, WhatAnotherProgramRecordsIsAnswerableSoon) {
  const std::string line = testing::closed_case("new-1", "charge_air_hose", "split", "present");
  ASSERT_EQ(shop_.run({"add", "--json", "-"}, line).exit_code, 0);
  EXPECT_LT(seconds_until([&] { return ask("P0299")["cases_in_records"] == 9; }), kPromised);
}

TEST_F(Http, ManyAskWhileOthersRecord) {
  std::vector<std::thread> threads;
  std::atomic<int> failures = 0;
  for (int t = 0; t < 4; ++t) {
    threads.emplace_back([&, t] {
      for (int i = 0; i < 20; ++i) {
        const std::string ref = "t" + std::to_string(t) + "-" + std::to_string(i);
        const auto reply = t == 0 ? post("/v1/cases", testing::closed_case(ref, "charge_air_hose",
                                                                           "split", "present"))
                                  : post("/v1/ask", R"({"text":"P0299 flat uphill"})");
        if (!reply || reply->status != (t == 0 ? 201 : 200)) ++failures;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(failures, 0);
  EXPECT_LT(seconds_until([&] { return ask("P0299")["cases_in_records"] == 28; }), kPromised);
  EXPECT_EQ(shop_.run({"verify"}).exit_code, 0);
}

// Nagle's algorithm against delayed acknowledgement costs 40 ms a reply.
TEST_F(Http, KeptAliveRepliesAreNotHeldBack) {
  auto kept = client();
  kept.set_keep_alive(true);
  ASSERT_TRUE(kept.Get("/healthz"));
  const auto begin = Clock::now();
  for (int i = 0; i < 20; ++i) ASSERT_TRUE(kept.Get("/healthz"));
  EXPECT_LT(std::chrono::duration<double>(Clock::now() - begin).count(), 0.4);
}

// A connection that says nothing; closed with the object.
class IdleConnection {
 public:
  explicit IdleConnection(int port) : socket_(socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    EXPECT_EQ(connect(socket_, reinterpret_cast<sockaddr*>(&address), sizeof(address)), 0);
  }
  ~IdleConnection() { close(socket_); }
  IdleConnection(const IdleConnection&) = delete;
  IdleConnection& operator=(const IdleConnection&) = delete;

 private:
  int socket_;
};

// The library's default of eight threads makes newcomers wait 5 s behind eight of these.
TEST_F(Http, IdleConnectionsHoldUpNobody) {
  std::vector<std::unique_ptr<IdleConnection>> idle;
  for (int i = 0; i < 16; ++i) idle.push_back(std::make_unique<IdleConnection>(port_));
  const auto begin = Clock::now();
  ASSERT_TRUE(client().Get("/healthz"));
  EXPECT_LT(std::chrono::duration<double>(Clock::now() - begin).count(), 0.5);
}

TEST_F(Http, ABodyOfUnknownLengthIsRefused) {
  const auto reply = client().Post(
      "/v1/ask",
      [](std::size_t, httplib::DataSink& sink) {
        const std::string text = R"({"text":"P0299"})";
        sink.write(text.data(), text.size());
        sink.done();
        return true;
      },
      kJson);
  expect_problem(reply, 411);
}

TEST_F(Http, HealthTellsCasesAndRevision) {
  const auto reply = client().Get("/healthz");
  ASSERT_TRUE(reply);
  EXPECT_EQ(json::parse(reply->body), json::parse(R"({"status":"ok","cases":8,"revision":8,
                                                      "answering_as_of":8})"));
}

// Told at once after the start, when a stop is easily lost.
TEST_F(Http, StopsCleanlyWhenToldTo) {
  for (const int signal : {SIGINT, SIGTERM, SIGINT, SIGTERM, SIGINT, SIGTERM}) {
    testing::Process other({shop_.command({"serve", "--port", "0"}), ""});
    EXPECT_NE(other.read_line(), "");
    const auto ended = other.stop_with(signal);
    EXPECT_EQ(ended.exit_code, 0);
    EXPECT_EQ(ended.err, "");
  }
}

TEST_F(Http, ATakenPortIsAnErrorNotAShare) {
  const auto ended = shop_.run({"serve", "--port", std::to_string(port_)});
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_NE(ended.err.find(std::to_string(port_)), std::string::npos);
}

}  // namespace
}  // namespace shoplore
