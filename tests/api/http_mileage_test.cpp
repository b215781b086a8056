// Failure mileage over HTTP.
#include <fstream>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using testing::expect_problem;
using HttpMileage = testing::HttpShop;

TEST_F(HttpMileage, AnswersAsTheCommandLineDoes) {
  const auto reply = get("/v1/mileage?cause=wastegate+linkage&engine_family=bw16d");
  ASSERT_TRUE(reply && reply->status == 200);
  EXPECT_EQ(reply->body + "\n",
            shop_.run({"mileage", "wastegate linkage", "--engine-family", "bw16d", "--json"}).out);
}

TEST_F(HttpMileage, ThePictureIsThatOfTheCommandLine) {
  const auto reply = get("/v1/mileage.svg?cause=wastegate_linkage:seized_open");
  ASSERT_TRUE(reply && reply->status == 200);
  EXPECT_EQ(reply->get_header_value("Content-Type"), "image/svg+xml");
  const std::string file = (shop_.around() / "x.svg").string();
  EXPECT_EQ(shop_.run({"mileage", "wastegate linkage", "--svg", file}).exit_code, 0);
  std::ifstream in(file);
  EXPECT_EQ(reply->body, std::string(std::istreambuf_iterator<char>(in), {}));
}

TEST_F(HttpMileage, WrongQuestionsAreRefusedByName) {
  const struct {
    const char* query;
    const char* place;
  } rows[] = {{"", "?cause"},
              {"?cause=flux+capacitor", "?cause"},
              {"?cause=wastegate_linkag:seized_open", "?cause"},
              {"?cause=wastegate+linkage&colour=red", "?colour"},
              {"?cause=a&cause=b", "?cause"}};
  for (const auto& row : rows) {
    SCOPED_TRACE(row.query);
    expect_problem(get(std::string("/v1/mileage") + row.query), 400, row.place);
    expect_problem(get(std::string("/v1/mileage.svg") + row.query), 400, row.place);
  }
}

}  // namespace
}  // namespace shoplore
