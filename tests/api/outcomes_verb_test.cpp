// `shoplore outcomes` and all that belongs to it, as a person at the counter meets it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/back_again.hpp"
#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::Ended;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::TestShop;

// A sentence wrapped over lines, as one line.
std::string unwrapped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const char plain = c == '\n' ? ' ' : c;
    if (plain == ' ' && !out.empty() && out.back() == ' ') continue;
    out += plain;
  }
  return out;
}

class OutcomesVerb : public ::testing::Test {
 protected:
  Ended outcomes(std::vector<std::string> words) const {
    words.insert(words.begin(), "outcomes");
    return shop_.run(words);
  }
  void record(const std::string& text) const {
    const Ended ended = shop_.run({"add", "--json", "-"}, text);
    ASSERT_EQ(ended.exit_code, 0) << ended.err;
  }
  Ended close_back_again() const {
    return shop_.run({"add", "--to", "back-1", "--json", "-"},
                     R"({"state":"closed",)" + testing::kFound + "}");
  }
  json shown(const std::string& ref) const {
    return json::parse(shop_.run({"show", ref, "--json"}).out);
  }
  // Cases counted of a cause, by what the answer to its question says was seen.
  std::map<std::string, int> seen() const {
    const Ended ended = shop_.run({"ask", "P0299 lack of power", "--rows", "50", "--json"});
    std::map<std::string, int> counts;
    const json answer = json::parse(ended.out);
    for (const json& row : answer["likely_causes"]) {
      counts[row["component"]] = row["seen"];
    }
    return counts;
  }
  TestShop shop_;
};

TEST_F(OutcomesVerb, AVehicleBroughtBackIsRecognisedLinkedAndCountedAnew) {
  record(testing::kTurboPutIn);
  const Ended booked = shop_.run({"add", "--json", "-"}, testing::kBackAgain);
  ASSERT_EQ(booked.exit_code, 0) << booked.err;
  EXPECT_THAT(unwrapped(booked.err), HasSubstr("turbo-1, 60 days and 4,100 km before: replace "
                                               "turbocharger (turbocharger, worn); both with lack "
                                               "of power"));
  EXPECT_THAT(unwrapped(shop_.run({"show", "back-1"}).out), HasSubstr("turbo-1, 60 days"));
  const Ended asked = shop_.run({"ask", "--case", "back-1"});
  EXPECT_THAT(unwrapped(asked.out),
              HasSubstr("This may be turbo-1 coming back, 60 days after: replace "
                        "turbocharger"));

  const Ended closed = close_back_again();
  ASSERT_EQ(closed.exit_code, 0) << closed.err;
  EXPECT_THAT(unwrapped(closed.err),
              HasSubstr("shoplore outcomes turbo-1 came_back --of back-1 --reason "
                        "wrong_cause|workmanship|unrelated"));

  const auto before = seen();
  ASSERT_EQ(before.at("turbocharger"), 1);
  ASSERT_EQ(before.at("wastegate_linkage"), 7);
  const Ended linked =
      outcomes({"turbo-1", "came_back", "--of", "back-1", "--reason", "wrong_cause"});
  ASSERT_EQ(linked.exit_code, 0) << linked.err;
  EXPECT_THAT(unwrapped(linked.out), HasSubstr("counts under wastegate linkage, seized open"));
  const auto after = seen();
  EXPECT_FALSE(after.contains("turbocharger")) << "one less of the wrong cause";
  EXPECT_EQ(after.at("wastegate_linkage"), 8) << "one more of the right one";

  EXPECT_EQ(shown("back-1")["follows"], "turbo-1");
  const json earlier = shown("turbo-1");
  EXPECT_EQ(earlier["cause"]["component"], "wastegate_linkage");
  EXPECT_EQ(earlier["outcome"], json::parse(R"({"status":"came_back","as_of":"2026-05-03",
      "mileage_km":124100,"reason":"wrong_cause"})"));
  const json history = json::parse(shop_.run({"show", "turbo-1", "--history", "--json"}).out);
  EXPECT_EQ(history[0]["record"]["cause"]["component"], "turbocharger");

  const Ended silent = shop_.run({"show", "back-1"});
  EXPECT_THAT(silent.out, Not(HasSubstr("Back again?")));
  const std::string lasted = unwrapped(shop_.run({"show", "turbo-1"}).out);
  EXPECT_THAT(lasted, HasSubstr("replace turbocharger, 1 case: 1 came back (1 wrong cause)"));
}

TEST_F(OutcomesVerb, WhatNobodyHeardOfIsDueUntilSomebodyDid) {
  record(testing::kTurboPutIn);
  const json due = json::parse(outcomes({"--json"}).out);
  ASSERT_EQ(due["due"].size(), 1U);
  EXPECT_EQ(due["due"][0]["ref"], "turbo-1");
  EXPECT_EQ(due["due"][0]["job_number"], "4711");
  EXPECT_THAT(outcomes({}).out, HasSubstr("turbo-1 · job 4711 · Brackwater Tidal BW16D"));
  const Ended stayed = outcomes({"turbo-1", "stayed_fixed", "--on", "2026-06-01", "--json"});
  ASSERT_EQ(stayed.exit_code, 0) << stayed.err;
  EXPECT_EQ(json::parse(stayed.out)["record"]["outcome"]["as_of"], "2026-06-01");
  const Ended none = outcomes({});
  EXPECT_EQ(none.exit_code, 1);
  EXPECT_THAT(none.out, HasSubstr("Nothing is due"));
}

TEST_F(OutcomesVerb, WhatCannotBeIsRefusedByName) {
  record(testing::kTurboPutIn);
  record(testing::kBackAgain);
  struct Row {
    std::vector<std::string> words;
    std::string place, reason;
  };
  const std::vector<Row> table{
      {{"nobody", "stayed_fixed"}, "nobody", ""},
      {{"back-1", "stayed_fixed"}, "back-1", "is open; only a closed case has an outcome"},
      {{"turbo-1"}, "command line", "expected what became of turbo-1"},
      {{"turbo-1", "exploded"}, "STATUS", "expected one of stayed_fixed"},
      {{"--on", "2026-06-01"}, "command line", "expected REF"},
      {{"turbo-1", "stayed_fixed", "--limit", "3"}, "--limit", "of the list only"},
      {{"turbo-1", "stayed_fixed", "--on", "June"}, "--on", ""},
      {{"turbo-1", "stayed_fixed", "--on", "2026-03-01"}, "--on", "before the closing"},
      {{"turbo-1", "stayed_fixed", "--mileage", "119000"}, "--mileage", "less than the 120000 km"},
      {{"turbo-1", "stayed_fixed", "--reason", "part"}, "--reason", "only what came_back"},
      {{"turbo-1", "came_back", "--reason", "fate"}, "--reason", "expected one of same_cause"},
      {{"turbo-1", "came_back", "--of", "turbo-1"}, "--of", "of itself"},
      {{"turbo-1", "came_back", "--of", "old-1"}, "--of", "before turbo-1 was closed"},
      {{"turbo-1", "came_back", "--reason", "wrong_cause"}, "--cause", "needs the right one"},
      {{"turbo-1", "came_back", "--reason", "wrong_cause", "--cause", "linkage"},
       "--cause",
       "component:failure"},
      {{"turbo-1", "came_back", "--reason", "wrong_cause", "--cause", "flux:worn"},
       "--cause",
       "'flux' is not a component"}};
  const std::string before = shop_.exported();
  for (const auto& [words, place, reason] : table) {
    const Ended ended = outcomes(words);
    EXPECT_EQ(ended.exit_code, 2) << ended.out;
    EXPECT_THAT(ended.err, HasSubstr("shoplore outcomes: " + place)) << reason;
    EXPECT_THAT(ended.err, HasSubstr(reason)) << place;
  }
  EXPECT_EQ(shop_.exported(), before) << "something was written";
}

}  // namespace
}  // namespace shoplore
