#include "api/http/metrics.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <sstream>
#include <thread>
#include <vector>

namespace shoplore {
namespace {

LiveRecords::Health health() {
  return {Revision{3'155}, Revision{3'150}, 3'155, 2'421, ""};
}

std::map<RequestKind, std::uint64_t> requests() {
  RequestCounts counts;
  counts.add("POST", "/v1/ask", 200);
  counts.add("POST", "/v1/ask", 201);
  counts.add("POST", "/v1/ask", 400);
  counts.add("GET", "/v1/cases/{ref}", 304);
  return counts.all();
}

TEST(Metrics, EverySampleIsThere) {
  const KeptLately kept{"", {}, {}, 2, 1, 3};
  const std::string text = metrics_text(health(), requests(), kept);
  for (const char* line :
       {"shoplore_cases 2421\n", "shoplore_records_revision 3155\n",
        "shoplore_index_lag_revisions 5\n", "shoplore_index_follows 1\n",
        "shoplore_requests_total{method=\"POST\",route=\"/v1/ask\",status=\"2xx\"} 2\n",
        "shoplore_requests_total{method=\"POST\",route=\"/v1/ask\",status=\"4xx\"} 1\n",
        "shoplore_requests_total{method=\"GET\",route=\"/v1/cases/{ref}\",status=\"3xx\"} 1\n",
        "shoplore_lately_changes{change=\"risen\"} 2\n",
        "shoplore_lately_changes{change=\"fallen\"} 1\n", "shoplore_lately_pairings 3\n"}) {
    EXPECT_NE(text.find(std::string("\n") + line), std::string::npos) << line << text;
  }
}

// Text exposition format 0.0.4: comments, then samples of the metric they are about.
TEST(Metrics, IsWellFormed) {
  const std::regex comment(R"(# (HELP|TYPE) ([a-z_]+) .+)");
  const std::regex sample(R"re(([a-z_]+)(\{[a-z_]+="[^"\\]*"(,[a-z_]+="[^"\\]*")*\})? -?\d+)re");
  std::istringstream lines(metrics_text(health(), requests(), KeptLately{}));
  std::string about;
  std::set<std::string> seen;
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_match(line, match, comment)) {
      about = match[2];
      continue;
    }
    ASSERT_TRUE(std::regex_match(line, match, sample)) << line;
    EXPECT_EQ(match[1], about) << line;
    EXPECT_TRUE(seen.insert(line.substr(0, line.rfind(' '))).second) << "twice: " << line;
  }
}

TEST(Metrics, TroubleAndWhatIsNotKeptShow) {
  LiveRecords::Health ill = health();
  ill.trouble = "disk full";
  const std::string text = metrics_text(ill, {}, {});
  EXPECT_NE(text.find("shoplore_index_follows 0\n"), std::string::npos);
  EXPECT_EQ(text.find("lately"), std::string::npos);
}

TEST(RequestCounts, NoneIsLostBetweenThreads) {
  RequestCounts counts;
  std::vector<std::thread> threads;
  for (int i = 0; i < 4; ++i) {
    threads.emplace_back([&] {
      for (int j = 0; j < 1'000; ++j) counts.add("GET", "/healthz", 200);
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(counts.all().at({"GET", "/healthz", 2}), 4'000U);
}

}  // namespace
}  // namespace shoplore
