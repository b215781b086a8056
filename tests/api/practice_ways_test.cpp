// Practice as a person or a page meets it: played from start to feedback on the demo workshop, on
// the terminal and over HTTP; nothing tells the cause before it is committed to.
#include <gmock/gmock.h>

#include <set>
#include <sstream>

#include "corpus-demo/generator.hpp"
#include "indexer/case_json.hpp"
#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::closed_case;
using testing::Ended;
using testing::expect_problem;
using ::testing::HasSubstr;
using testing::HttpShop;
using ::testing::Not;
using testing::TestShop;

constexpr const char* kRounds = "/v1/practice/rounds";

std::string demo_lines() {
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  std::string lines;
  generate_workshop(demo_world(), vocabulary, {400, 1},
                    [&](const DemoCase& drawn) { lines += case_to_json(drawn.record) + "\n"; });
  return lines;
}

// Lines may break anywhere.
std::string one_line(const std::string& text) {
  std::istringstream words(text);
  std::string line;
  for (std::string word; words >> word;) line += (line.empty() ? "" : " ") + word;
  return line;
}

class PracticeOverHttp : public HttpShop {
 protected:
  json posted(const std::string& path, const json& body, int status) const {
    const auto reply = post(path, body.dump());
    EXPECT_TRUE(reply && reply->status == status) << path << " " << (reply ? reply->body : "");
    return reply ? json::parse(reply->body) : json();
  }
  void load(const std::string& lines) {
    ASSERT_EQ(shop_.run({"import", "-"}, lines).exit_code, 0);
    server_.reset();
    start();
  }
};

TEST_F(PracticeOverHttp, ACaseIsPlayedFromStartToFeedback) {
  load(demo_lines());
  const auto made = post(kRounds, R"({"apprentice":"a1","seed":3})");
  ASSERT_TRUE(made && made->status == 201) << (made ? made->body : "");
  const json round = json::parse(made->body);
  const std::string id = round["id"], path = std::string(kRounds) + "/" + id;
  EXPECT_EQ(made->get_header_value("Location"), path);
  EXPECT_EQ(round["state"], "open");
  EXPECT_EQ(read(path), round);
  for (const char* hidden :
       {"ref", "notes", "cause", "correction", "outcome", "checks", "closed"}) {
    EXPECT_FALSE(round["case"].contains(hidden)) << hidden;
  }

  const json belief{
      {"beliefs", json::array({{{"cause", "wastegate_linkage:seized_open"}, {"percent", 60}}})}};
  json now = posted(path + "/belief", belief, 200);
  EXPECT_EQ(now["steps"][0]["beliefs"][0]["name"], "wastegate linkage, seized open");
  now = posted(path + "/check", {{"check", "wastegate_linkage_by_hand"}}, 200);
  EXPECT_EQ(now["steps"].size(), 2U);
  expect_problem(get(path + "/feedback"), 409);

  // A round outlives the server.
  server_.reset();
  start();
  EXPECT_EQ(read(path), now);

  const json done = posted(path + "/commit", {{"cause", "wastegate_linkage:seized_open"}}, 200);
  const json& feedback = done["feedback"];
  EXPECT_EQ(done["round"]["state"], "committed");
  const bool right = feedback["cause"]["component"] == "wastegate_linkage" &&
                     feedback["cause"]["failure"] == "seized_open";
  EXPECT_EQ(feedback["right"], right ? "yes" : "no");
  EXPECT_NEAR(feedback["points"].get<double>(),
              100 * (1 - feedback["score"]["brier"].get<double>() / 2), 1e-9);
  EXPECT_FALSE(feedback["ref"].get<std::string>().empty());
  EXPECT_EQ(read(path + "/feedback"), done);
  expect_problem(post(path + "/commit", R"({"cause":"turbocharger:worn"})"), 409, id);
  const json progress = read("/v1/practice/progress?apprentice=a1");
  EXPECT_EQ(progress["kinds"][0]["rounds"], 1);
  EXPECT_EQ(progress["calibration"]["word"], "too_few");

  EXPECT_EQ(client().Delete("/v1/practice/progress?apprentice=a1")->status, 204);
  expect_problem(get("/v1/practice/progress?apprentice=a1"), 404);
  expect_problem(get(path), 404, id);
}

// Cases that came in exactly alike and had different causes: whatever a round shows before it is
// committed must be the same for all of them.
TEST_F(PracticeOverHttp, NothingTellsTheCauseBeforeItIsCommittedTo) {
  std::string lines;
  for (int i = 0; i < 8; ++i) {
    const std::string n = std::to_string(i);
    lines += closed_case("a-" + n, "wastegate_linkage", "seized_open", "absent") + "\n" +
             closed_case("b-" + n, "charge_air_hose", "split", "absent") + "\n" +
             closed_case("c-" + n, "turbocharger", "worn", "absent") + "\n";
  }
  load(lines);
  std::set<std::string> bodies, causes;
  const auto seen = [&](json round) {
    if (round["case"]["symptoms"][1]["state"] != "absent") return;  // a case of the shop's own
    round.erase("id");
    bodies.insert(round.dump());
  };
  for (int seed = 0; seed < 24; ++seed) {
    const json round = posted(kRounds, {{"apprentice", "a1"}, {"seed", seed}}, 201);
    const std::string path = std::string(kRounds) + "/" + round["id"].get<std::string>();
    seen(round);
    seen(posted(path + "/belief",
                {{"beliefs", json::array({{{"cause", "hose split"}, {"percent", 40}}})}}, 200));
    seen(posted(path + "/check", {{"check", "wastegate_linkage_by_hand"}}, 200));
    seen(read(path));
    const json done = posted(path + "/commit", {{"cause", "hose split"}}, 200);
    causes.insert(done["feedback"]["cause"]["component"].get<std::string>());
  }
  EXPECT_EQ(causes.size(), 3U);
  EXPECT_EQ(bodies.size(), 3U);  // one for each: begun, believed, asked
}

TEST_F(PracticeOverHttp, WhatIsWrongIsNamed) {
  struct Row {
    const char* body;
    int status;
    const char* place;
  };
  for (const Row& row :
       {Row{R"({})", 400, "/apprentice"}, Row{R"({"apprentice":"Pete"})", 400, "/apprentice"},
        Row{R"({"apprentice":"a1","kind":"riddle"})", 400, "/kind"},
        Row{R"({"apprentice":"a1","colour":"red"})", 400, "/colour"},
        Row{R"({"apprentice":"a1"})", 409, "records"}}) {
    expect_problem(post(kRounds, row.body), row.status, row.place);
  }
  expect_problem(get("/v1/practice/progress"), 400, "?apprentice");
  expect_problem(get("/v1/practice/progress?apprentice=Pete"), 400, "?apprentice");
  expect_problem(get("/v1/practice/progress?apprentice=q9"), 404, "q9");
  expect_problem(client().Delete("/v1/practice/progress?apprentice=q9"), 404, "q9");
  // There is no list of apprentices.
  expect_problem(get("/v1/practice"), 404);
  expect_problem(get(kRounds), 405);

  const json code = posted(kRounds, {{"apprentice", "a1"}, {"kind", "code"}}, 201);
  const std::string path = std::string(kRounds) + "/" + code["id"].get<std::string>();
  const std::string belief = R"({"beliefs":[{"cause":"hose split","percent":60}]})";
  expect_problem(post(path + "/belief", belief), 409);
  expect_problem(post(path + "/check", R"({"check":"wastegate_linkage_by_hand"})"), 409);
  expect_problem(post(path + "/check", R"({"check":"warp core"})"), 400, "/check");
  expect_problem(post(path + "/commit", R"({"choice":5})"), 400, "/choice");
  expect_problem(post(path + "/commit", R"({"choice":1,"percent":3})"), 400);
  expect_problem(post(path + "/belief", R"({"beliefs":[{"cause":"hose split","percent":"x"}]})"),
                 400, "/beliefs/0/percent");
  const json done = posted(path + "/commit", {{"choice", 1}}, 200);
  EXPECT_EQ(done["feedback"]["choices"].size(), 4U);
}

TEST(PracticeVerb, ACaseIsPlayedFromStartToFeedback) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import", "-"}, demo_lines()).exit_code, 0);
  const std::string lines =
      "60 wastegate linkage seized open, 60 turbo vanes sticking\n"
      "-5 turbo vanes sticking\nmany turbo vanes sticking\n50 flux capacitor\n"
      "check warp core\n"
      "60 wastegate linkage seized open, 30 turbo vanes sticking\n"
      "check wastegate_linkage_by_hand\n"
      "causes vanes\n"
      "commit wastegate linkage seized open\n"
      "commit wastegate linkage seized open\n"
      "next\n"
      "stop\n";
  const Ended played = shop.run({"practice", "--apprentice", "a1", "--seed", "3"}, lines);
  EXPECT_EQ(played.exit_code, 0) << played.err;
  for (const char* says :
       {"complaint", "you said 60 % wastegate linkage, seized open", "10 % something else",
        "check move the wastegate linkage by hand", "turbocharger vanes, sticking", "points ",
        "as it came in", "minutes "}) {
    EXPECT_THAT(one_line(played.out), HasSubstr(says));
  }
  for (const char* says :
       {"120 % together", "less than nothing", "was not understood",
        "\"flux capacitor\" names no known cause", "there is no check called \"warp core\"",
        "is committed already", "stays open"}) {
    EXPECT_THAT(one_line(played.err), HasSubstr(says));
  }

  const Ended as_json = shop.run({"practice", "--apprentice", "b1", "--seed", "3", "--json"},
                                 "60 wastegate linkage seized open\ncommit turbocharger worn\n");
  std::istringstream replies(as_json.out);
  std::vector<json> read;
  for (std::string line; std::getline(replies, line);) read.push_back(json::parse(line));
  ASSERT_EQ(read.size(), 3U);
  EXPECT_FALSE(read[0]["case"].contains("cause"));
  EXPECT_EQ(read[1]["steps"].size(), 1U);
  EXPECT_TRUE(read[2]["feedback"].contains("score"));

  EXPECT_EQ(shop.run({"practice", "progress", "--apprentice", "a1"}).exit_code, 0);
  EXPECT_THAT(shop.run({"practice", "progress", "--apprentice", "a1"}).out, HasSubstr("too few"));
  const json exported = json::parse(shop.run({"practice", "export", "--apprentice", "a1"}).out);
  EXPECT_EQ(exported["results"].size(), 1U);
  EXPECT_FALSE(exported.contains("rounds"));
  EXPECT_EQ(shop.run({"practice", "delete", "--apprentice", "a1"}).exit_code, 0);
  EXPECT_EQ(shop.run({"practice", "delete", "--apprentice", "a1"}).exit_code, 2);
  EXPECT_EQ(shop.run({"practice", "progress", "--apprentice", "b1"}).exit_code, 0);
}

TEST(PracticeVerb, ATerminalNarrowOrWideIsNotOverrun) {
  const TestShop shop;
  ASSERT_EQ(shop.run({"import", "-"}, demo_lines()).exit_code, 0);
  for (const std::size_t width : {60U, 80U}) {
    const Ended played = testing::run_program(
        {shop.command({"practice", "--apprentice", "a1", "--seed", "5"}),
         "60 wastegate linkage seized open, 30 turbo vanes sticking\ncheck nothing of the sort\n"
         "commit turbocharger worn\n",
         {{"COLUMNS", std::to_string(width)}}});
    std::istringstream lines(played.out + played.err);
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), width) << line;
  }
}

TEST(PracticeVerb, AShopOfTwelveCasesIsToldWhatIsMissingAndWhatToDo) {
  const TestShop shop;
  std::string lines;
  for (int i = 0; i < 4; ++i) {
    lines += closed_case("job-" + std::to_string(i), "turbocharger", "worn", "absent") + "\n";
  }
  ASSERT_EQ(shop.run({"import", "-"}, lines).exit_code, 0);
  const Ended refused = shop.run({"practice", "--apprentice", "a1"});
  EXPECT_EQ(refused.exit_code, 1);
  EXPECT_THAT(one_line(refused.out), HasSubstr("12 closed cases"));
  EXPECT_THAT(one_line(refused.out), HasSubstr("there must be 3, and there is 1"));
  EXPECT_THAT(one_line(refused.out), HasSubstr("Close cases with their cause"));
  // What needs no cases goes on.
  EXPECT_EQ(shop.run({"practice", "--apprentice", "a1", "--kind", "code"}, "1\n").exit_code, 0);
}

TEST(PracticeVerb, WrongOptionsAreNamed) {
  const TestShop shop;
  const std::vector<std::pair<std::vector<std::string>, const char*>> rows{
      {{"practice"}, "--apprentice"},
      {{"practice", "--apprentice", "Pete"}, "nobody's name"},
      {{"practice", "--apprentice", "a1", "--kind", "riddle"}, "--kind"},
      {{"practice", "--apprentice", "a1", "--difficulty", "absurd"}, "--difficulty"},
      {{"practice", "--apprentice", "a1", "--seed", "-x"}, "seed"},
      {{"practice", "--round", "a1-00000000"}, "no such round"},
      {{"practice", "progress"}, "--apprentice"},
      {{"practice", "progress", "--apprentice", "q9"}, "nobody has practised"}};
  for (const auto& [arguments, says] : rows) {
    const Ended ended = shop.run(arguments);
    EXPECT_EQ(ended.exit_code, 2) << says;
    EXPECT_THAT(one_line(ended.err), HasSubstr(says));
  }
}

}  // namespace
}  // namespace shoplore
