// A fixture: a test shop with the built server on it, met over HTTP only.
#pragma once

#include <gtest/gtest.h>
#include <httplib.h>

#include <memory>

#include <nlohmann/json.hpp>
#include <string>

#include "tests/api/shop.hpp"

namespace shoplore::testing {

inline constexpr const char* kJson = "application/json";
inline constexpr const char* kPatch = "application/merge-patch+json";

class HttpShop : public ::testing::Test {
 protected:
  HttpShop() { start(); }

  void start() {
    server_ = std::make_unique<Process>(Start{shop_.command({"serve", "--port", "0"}), ""});
    const std::string line = server_->read_line();
    const std::string before = "listening on http://127.0.0.1:";
    EXPECT_EQ(line.substr(0, before.size()), before);
    port_ = std::atoi(line.substr(before.size()).c_str());
  }

  [[nodiscard]] httplib::Client client() const { return httplib::Client("127.0.0.1", port_); }

  [[nodiscard]] httplib::Result get(const std::string& path,
                                    const httplib::Headers& headers = {}) const {
    return client().Get(path.c_str(), headers);
  }
  [[nodiscard]] httplib::Result post(const std::string& path, const std::string& body,
                                     const char* type = kJson) const {
    return client().Post(path.c_str(), body, type);
  }
  [[nodiscard]] httplib::Result post(const std::string& path, const httplib::Headers& headers,
                                     const std::string& body) const {
    return client().Post(path.c_str(), headers, body, kJson);
  }
  [[nodiscard]] httplib::Result patch(const std::string& path, const httplib::Headers& headers,
                                      const std::string& body) const {
    return client().Patch(path.c_str(), headers, body, kPatch);
  }

  // The body of a GET, which must answer 200.
  [[nodiscard]] nlohmann::json read(const std::string& path) const {
    const auto reply = get(path);
    EXPECT_TRUE(reply && reply->status == 200) << path << " " << (reply ? reply->body : "");
    return reply ? nlohmann::json::parse(reply->body) : nlohmann::json();
  }

  [[nodiscard]] nlohmann::json ask(const std::string& text) const {
    const auto reply = post("/v1/ask", nlohmann::json{{"text", text}}.dump());
    return reply ? nlohmann::json::parse(reply->body) : nlohmann::json();
  }

  TestShop shop_;
  std::unique_ptr<Process> server_;
  int port_ = 0;
};

inline void expect_problem(const httplib::Result& reply, int status,
                           const std::string& place = "") {
  ASSERT_TRUE(reply) << httplib::to_string(reply.error());
  EXPECT_EQ(reply->status, status) << reply->body;
  EXPECT_EQ(reply->get_header_value("Content-Type"), "application/problem+json");
  const auto problem = nlohmann::json::parse(reply->body);
  EXPECT_EQ(problem["status"], status);
  EXPECT_EQ(problem["type"], "about:blank");
  if (place.empty()) return;
  EXPECT_EQ(problem.value("place", ""), place) << reply->body;
}

}  // namespace shoplore::testing
