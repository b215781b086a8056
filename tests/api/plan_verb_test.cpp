// The repair plan as a person meets it on the command line.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::Ended;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

std::string open_case(const TestShop& shop) {
  const std::string line =
      R"({"schema":1,"ref":"now-1","state":"open","opened":"2026-04-01","job_number":"J-9",)"
      R"("vehicle":{"make":"Brackwater","model":"Tidal","model_year":2016,"engine_family":"BW16D"},)"
      R"("complaint":"flat <uphill>"})";
  EXPECT_EQ(shop.run({"import", "-"}, line + "\n").exit_code, 0);
  return "now-1";
}

TEST(PlanVerb, PlansACauseNamedInPlainWords) {
  const TestShop shop;
  const Ended ended = shop.run({"plan", "wastegate", "linkage", "seized", "open"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "Repair plan: wastegate linkage, seized open");
  EXPECT_SAYS(ended.out, "from 6 cases");
  const json plan = json::parse(shop.run({"plan", "wastegate_linkage:seized_open", "--json"}).out);
  EXPECT_EQ(plan.at("cases"), 6);
  EXPECT_EQ(plan.at("cause").at("failure"), "seized_open");
}

TEST(PlanVerb, ACauseNeverSeenSaysSoAndEndsWithOne) {
  const TestShop shop;
  const Ended ended = shop.run({"plan", "alternator:seized"});
  EXPECT_EQ(ended.exit_code, 1) << ended.err;
  EXPECT_SAYS(ended.out, "No closed case here turned out to be this");
  EXPECT_SAYS(ended.out, "shoplore plan \"alternator\"");
  const Ended as_json = shop.run({"plan", "alternator:seized", "--json"});
  EXPECT_EQ(as_json.exit_code, 1);
  EXPECT_EQ(json::parse(as_json.out).at("cases"), 0);
  EXPECT_TRUE(json::parse(as_json.out).at("proposed").is_null());
}

struct Refused {
  const char* name;
  std::vector<std::string> arguments;
  const char* place;
  const char* reason;
};

TEST(PlanVerb, RefusesByName) {
  const TestShop shop;
  open_case(shop);
  const std::string cause = "wastegate_linkage:seized_open";
  const Refused rows[] = {
      {"NoCause", {}, "cause", "required"},
      {"UnknownCause", {"flurble"}, "cause: ", "\"flurble\" names no known cause"},
      {"UnknownFailure",
       {"wastegate_linkage:xyzzy"},
       "cause: ",
       "\"xyzzy\" is not a known failure"},
      {"UnknownMake", {cause, "--make", "Nobody"}, "make: ", "\"Nobody\" is not a known make"},
      {"UnknownFamily",
       {cause, "--engine-family", "ZZ9"},
       "engine_family: ",
       "\"ZZ9\" is not a known engine family"},
      {"UnknownVehicle", {cause, "--vehicle", "2016 Flurble"}, "vehicle: ", "\"Flurble\""},
      {"NoVehicle", {cause, "--vehicle", "2016"}, "vehicle: ", "names no make"},
      {"UnknownCase", {cause, "--case", "case-999"}, "case-999", "no such case"},
      {"UnknownRemoval", {cause, "--open", "plug_cove"}, "open: ", "plug_cover"},
      {"ApprovalAlone", {cause, "--approval", "-"}, "--approval: ", "needs --case"},
      {"ApprovalAsJson",
       {cause, "--approval", "-", "--case", "now-1", "--json"},
       "--approval: ",
       "without --json"},
      {"ApprovalOfClosed", {cause, "--approval", "-", "--case", "old-1"}, "old-1: ", "is closed"},
      {"ApprovalOfNeverSeen",
       {"alternator:seized", "--approval", "-", "--case", "now-1"},
       "cause: ",
       "no repair of"},
      {"ApprovalNowhere",
       {cause, "--approval", "/nowhere/at/all.html", "--case", "now-1"},
       "/nowhere/at/all.html",
       ""}};
  for (const Refused& row : rows) {
    SCOPED_TRACE(row.name);
    std::vector<std::string> arguments{"plan"};
    arguments.insert(arguments.end(), row.arguments.begin(), row.arguments.end());
    const Ended ended = shop.run(arguments);
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_EQ(ended.out, "");
    EXPECT_SAYS(ended.err, "shoplore plan: ");
    EXPECT_SAYS(ended.err, row.place);
    EXPECT_SAYS(ended.err, row.reason);
  }
}

TEST(PlanVerb, TakesTheVehicleOfTheCaseUnlessAnotherIsNamed) {
  const TestShop shop;
  const std::string ref = open_case(shop), cause = "wastegate_linkage:seized_open";
  const auto family = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"plan", cause, "--json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return json::parse(shop.run(arguments).out).at("vehicle").at("engine_family");
  };
  EXPECT_EQ(family({}), "");
  EXPECT_EQ(family({"--case", ref}), "BW16D");
  EXPECT_EQ(family({"--case", ref, "--vehicle", "Cormont CM14P"}), "CM14P");
  EXPECT_EQ(family({"--case", ref, "--make", "Cormont"}), "");
  EXPECT_EQ(family({"--vehicle", "2016 Brackwater Tidal BW16D", "--engine-family", "BW14P"}),
            "BW14P");
}

TEST(PlanVerb, WritesTheApprovalApart) {
  const TestShop shop;
  const std::string ref = open_case(shop), file = (shop.around() / "approval.html").string();
  const std::vector<std::string> plan{"plan", "wastegate_linkage:seized_open", "--case", ref};
  std::vector<std::string> to_file = plan, to_output = plan;
  to_file.insert(to_file.end(), {"--approval", file});
  to_output.insert(to_output.end(), {"--approval", "-"});
  const Ended written = shop.run(to_file);
  EXPECT_EQ(written.exit_code, 0) << written.err;
  EXPECT_SAYS(written.out, file);
  std::ifstream in(file);
  std::stringstream text;
  text << in.rdbuf();
  EXPECT_SAYS(text.str(), "flat &lt;uphill&gt;");
  EXPECT_SAYS(text.str(), "J-9");
  EXPECT_EQ(shop.run(to_output).out, text.str());
}

}  // namespace
}  // namespace shoplore
