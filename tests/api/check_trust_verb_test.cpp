// Trust in checks as a person meets it: asked at closing, shown by track-record.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::closed_case;
using testing::Ended;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

// The look along the hoses tells about hoses only.
std::string with_look(const std::string& ref, const std::string& component,
                      const std::string& failure, const std::string& verdict,
                      const std::string& later = "") {
  json record = json::parse(closed_case(ref, component, failure, "absent"));
  json check = {{"id", "boost_hose_look"}, {"verdict", verdict}};
  if (!later.empty()) check["later"] = later;
  record["checks"] = json::array({check});
  return record.dump();
}

TEST(CheckTrustVerb, ClosingAsksOfContradictedVerdictsOnly) {
  const TestShop shop;
  const struct {
    const char* name;
    const char* component;
    const char* failure;
    const char* verdict;
    const char* later;
    bool asks;
  } rows[] = {{"passed, and it was the hose", "charge_air_hose", "split", "pass", "", true},
              {"failed, and it was not", "wastegate_linkage", "seized_open", "fail", "", true},
              {"already said", "charge_air_hose", "split", "pass", "misled", false},
              {"failed, and it was the hose", "charge_air_hose", "split", "fail", "", false},
              {"passed, and it was not", "wastegate_linkage", "seized_open", "pass", "", false}};
  int number = 0;
  for (const auto& row : rows) {
    SCOPED_TRACE(row.name);
    const std::string ref = "new-" + std::to_string(++number);
    const Ended ended = shop.run(
        {"add", "--json", "-"}, with_look(ref, row.component, row.failure, row.verdict, row.later));
    EXPECT_EQ(ended.exit_code, 0);
    EXPECT_TRUE(json::accept(ended.out));
    const bool asked = ended.err.find("contradicts") != std::string::npos;
    EXPECT_EQ(asked, row.asks) << ended.err;
    if (row.asks) {
      EXPECT_SAYS(ended.err, "/checks/0 boost_hose_look");
    }
  }
}

TEST(CheckTrustVerb, AnOpenCaseIsNotAsked) {
  const TestShop shop;
  json record = json::parse(with_look("new-1", "charge_air_hose", "split", "pass"));
  for (const char* field : {"closed", "cause", "correction", "outcome"}) record.erase(field);
  record["state"] = "open";
  const Ended open = shop.run({"add", "--json", "-"}, record.dump());
  EXPECT_EQ(open.exit_code, 0) << open.err;
  EXPECT_EQ(open.err, "");
  const Ended closed =
      shop.run({"add", "--to", "new-1", "--json", "-"},
               R"({"state":"closed","closed":"2026-03-04",)"
               R"("cause":{"component":"charge_air_hose","failure":"split","proof":"seen"}})");
  EXPECT_EQ(closed.exit_code, 0) << closed.err;
  EXPECT_SAYS(closed.err, "contradicts");
}

TEST(CheckTrustVerb, TrackRecordShowsWhatBecameOfVerdicts) {
  const TestShop shop;
  std::string lines;
  for (int i = 0; i < 7; ++i) {
    const bool misled = i < 3;
    lines += with_look("hose-" + std::to_string(i), "charge_air_hose", "split",
                       misled ? "pass" : "fail", misled ? "misled" : "") +
             "\n";
  }
  lines += with_look("link-1", "wastegate_linkage", "seized_open", "pass") + "\n";
  ASSERT_EQ(shop.run({"import", "-"}, lines).exit_code, 0);
  const Ended text = shop.run({"track-record", "--checks"});
  EXPECT_EQ(text.exit_code, 0) << text.err;
  EXPECT_SAYS(text.out, "3 of 4 (");
  EXPECT_SAYS(text.out, "0 of 4 (");
  const Ended as_json = shop.run({"track-record", "--checks", "--json"});
  const json checks = json::parse(as_json.out)["checks"];
  ASSERT_EQ(checks.size(), 1U);
  EXPECT_EQ(checks[0]["check"], "boost_hose_look");
  EXPECT_EQ(checks[0]["done"], 8);
  EXPECT_EQ(checks[0]["fail_against_cause"]["sensitivity"]["count"], 4);
  EXPECT_EQ(checks[0]["fail_against_cause"]["sensitivity"]["out_of"], 7);
}

TEST(CheckTrustVerb, WithoutAnyCheckNothingIsFound) {
  const TestShop shop;
  EXPECT_EQ(shop.run({"track-record", "--checks"}).exit_code, 1);
  EXPECT_EQ(shop.run({"track-record", "--checks", "--folds", "5"}).exit_code, 2);
}

}  // namespace
}  // namespace shoplore
