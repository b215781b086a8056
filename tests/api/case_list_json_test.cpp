// The list and the history as raw JSON: key sets and values, never our own reading of them.
#include "api/wire/case_list_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "indexer/case_json.hpp"

namespace shoplore {
namespace {

using nlohmann::json;

Vocabulary vocabulary() {
  return Vocabulary::built_in().value();
}

StoredCase stored(Case record) {
  record.ref = "a";
  record.opened = parse_date("2026-03-02").value();
  return {CaseId{7}, Revision{12}, std::move(record)};
}

json row_of(const Case& record) {
  return json::parse(case_list_json({stored(record)}, "", vocabulary()))["cases"][0];
}

TEST(CaseListJson, AnOpenCaseHasNoClosingAndNoCause) {
  Case record;
  record.complaint = "flat";
  record.vehicle.make = "Arlune";
  EXPECT_EQ(row_of(record), json::parse(R"({"ref":"a","revision":12,"state":"open",
      "opened":"2026-03-02","vehicle":"Arlune","complaint":"flat"})"));
}

TEST(CaseListJson, AClosedCaseNamesItsCause) {
  Case record;
  record.state = CaseState::kClosed;
  record.closed = parse_date("2026-03-04").value();
  record.cause = Cause{"wastegate_linkage", "seized_open", Proof::kSeen};
  EXPECT_EQ(row_of(record), json::parse(R"({"ref":"a","revision":12,"state":"closed",
      "opened":"2026-03-02","closed":"2026-03-04","vehicle":"","complaint":"",
      "cause":{"component":"wastegate_linkage","failure":"seized_open",
               "name":"wastegate linkage, seized open"}})"));
}

TEST(CaseListJson, ALongComplaintIsCutAtAWordAndAWholeCharacter) {
  struct Row {
    std::string given, shown;
  };
  const std::string fits(120, 'x');
  std::string words = std::string(100, 'x') + " noise" + std::string(100, 'y');
  std::string accents;
  for (int i = 0; i < 100; ++i) accents += "\u00e9";
  for (const auto& [given, shown] :
       std::vector<Row>{{fits, fits},
                        {fits + "x", std::string(117, 'x') + "\u2026"},
                        {words, std::string(100, 'x') + "\u2026"},
                        {accents, accents.substr(0, 116) + "\u2026"}}) {
    Case record;
    record.complaint = given;
    EXPECT_EQ(row_of(record)["complaint"], shown);
  }
}

TEST(CaseListJson, ACursorStandsBesideTheCases) {
  EXPECT_EQ(case_list_json({}, "7-x", vocabulary()), R"({"cases":[],"next_cursor":"7-x"})");
}

Change change(std::int64_t revision, const std::string& body) {
  return {Revision{revision}, CaseId{1}, 1'772'460'309, Role::kTechnician, body};
}

json changed(const std::string& before, const std::string& after) {
  const auto history =
      json::parse(case_history_json("a", before, {change(2, after)}, ShowRecord::kNo, ""));
  return history["changes"][0]["changed"];
}

TEST(CaseListJson, AChangeHasItsTimeRoleAndPlaces) {
  // 1772460309 is 2026-03-02T14:05:09Z: 20,514 days and 50,709 seconds.
  const auto history = case_history_json(
      "a", R"({"state":"open"})", {change(2, R"({"state":"waiting"})")}, ShowRecord::kYes, "2-x");
  EXPECT_EQ(json::parse(history), json::parse(R"({"ref":"a","changes":[{"revision":2,
      "at":"2026-03-02T14:05:09Z","role":"technician",
      "changed":[{"place":"/state","before":"open","after":"waiting"}],
      "record":{"state":"waiting"}}],"next_cursor":"2-x"})"));
}

TEST(CaseListJson, ObjectsAreComparedByFieldAndListsWhole) {
  EXPECT_EQ(changed(R"({"vehicle":{"make":"Arlune","fuel":"diesel"},"codes":[{"code":"P0299"}]})",
                    R"({"vehicle":{"make":"Cormont"},"codes":[{"code":"P0299"},{"code":"P0300"}],
                        "notes":"x"})"),
            json::parse(R"([{"place":"/vehicle/make","before":"Arlune","after":"Cormont"},
                {"place":"/vehicle/fuel","before":"diesel"},
                {"place":"/codes","before":[{"code":"P0299"}],
                 "after":[{"code":"P0299"},{"code":"P0300"}]},
                {"place":"/notes","after":"x"}])"));
}

TEST(CaseListJson, PlacesAreEscapedPointers) {
  // RFC 6901 section 3: ~ is ~0, / is ~1.
  EXPECT_EQ(changed(R"({"facts":{"a/b~c":"1"}})", R"({"facts":{}})"),
            json::parse(R"([{"place":"/facts/a~1b~0c","before":"1"}])"));
}

TEST(CaseListJson, EveryChangeIsComparedWithTheOneBefore) {
  const auto history = json::parse(case_history_json(
      "a", "", {change(1, R"({"state":"open"})"), change(2, R"({"state":"closed"})")},
      ShowRecord::kNo, ""));
  EXPECT_EQ(history["changes"][0]["changed"],
            json::parse(R"([{"place":"/state","after":"open"}])"));
  EXPECT_EQ(history["changes"][1]["changed"],
            json::parse(R"([{"place":"/state","before":"open","after":"closed"}])"));
  EXPECT_FALSE(history["changes"][0].contains("record"));
}

}  // namespace
}  // namespace shoplore
