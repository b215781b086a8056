#include "indexer/case_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "indexer/case_rules.hpp"
#include "tests/query/workshop.hpp"

namespace shoplore {
namespace {

using ::testing::HasSubstr;

TEST(CaseJson, ReadingWhatWasWrittenGivesTheSameBytes) {
  std::mt19937_64 random(11);
  for (int i = 0; i < 500; ++i) {
    const std::string text = case_to_json(testing::random_case(random));
    const auto read = case_from_json(text);
    ASSERT_TRUE(read) << describe(read.error());
    EXPECT_EQ(case_to_json(*read), text);
  }
}

TEST(CaseJson, AnEmptyListOfEarlierRepairsIsNotTheSameAsNone) {
  const auto asked =
      case_from_json(R"({"state":"open","opened":"2026-03-02","earlier_repairs":[]})");
  ASSERT_TRUE(asked);
  EXPECT_TRUE(case_from_json(case_to_json(*asked))->earlier_repairs.has_value());
  const auto not_asked = case_from_json(R"({"state":"open","opened":"2026-03-02"})");
  EXPECT_FALSE(case_from_json(case_to_json(*not_asked))->earlier_repairs.has_value());
}

TEST(CaseJson, EveryBodyCarriesTheSchema) {
  EXPECT_THAT(case_to_json(Case{}), HasSubstr("\"schema\":1"));
  const auto later = case_from_json(R"({"schema":2,"state":"open","opened":"2026-03-02"})");
  ASSERT_FALSE(later);
  EXPECT_EQ(later.error().place, "/schema");
}

struct Bad {
  const char *name, *json, *place;
};

TEST(CaseJson, RefusesByPointer) {
  const Bad table[] = {
      {"unknown field", R"({"state":"open","opened":"2026-03-02","colour":"red"})", "/colour"},
      {"no state", R"({"opened":"2026-03-02"})", "/state"},
      {"no such day", R"({"state":"open","opened":"2026-02-30"})", "/opened"},
      {"nested unknown", R"({"state":"open","opened":"2026-03-02","vehicle":{"vin":"x"}})",
       "/vehicle/vin"},
      {"wrong type", R"({"state":"open","opened":"2026-03-02","codes":"P0299"})", "/codes"},
      {"in a list", R"({"state":"open","opened":"2026-03-02","symptoms":[{"id":7}]})",
       "/symptoms/0/id"},
      {"enum", R"({"state":"shut","opened":"2026-03-02"})", "/state"},
      {"escaped key", R"({"state":"open","opened":"2026-03-02","a/b~c":1})", "/a~1b~0c"},
      {"not a whole number",
       R"({"state":"open","opened":"2026-03-02","vehicle":{"mileage_km":1.5}})",
       "/vehicle/mileage_km"},
      {"control character",
       "{\"state\":\"open\",\"opened\":\"2026-03-02\",\"notes\":\"a\\u001bb\"}", "/notes"}};
  for (const Bad& bad : table) {
    const auto read = case_from_json(bad.json);
    ASSERT_FALSE(read) << bad.name;
    ASSERT_FALSE(read.error().problems.empty()) << bad.name;
    EXPECT_EQ(read.error().problems.front().place, bad.place) << bad.name;
  }
}

TEST(CaseJson, AFieldThatStandsTwiceIsRefusedByName) {
  const auto read = case_from_json(R"({"state":"open","opened":"2026-03-02","state":"closed"})");
  ASSERT_FALSE(read);
  EXPECT_THAT(read.error().message, HasSubstr("'state' stands twice"));
  // The same name in two objects is no repetition.
  EXPECT_TRUE(case_from_json(
      R"({"state":"open","opened":"2026-03-02","symptoms":[{"id":"a"},{"id":"b"}]})"));
}

TEST(CaseJson, IdentityIsAFieldOfAnIntakeOnly) {
  const char* text = R"({"state":"open","opened":"2026-03-02","identity":{"plate":"AB12 CDE"}})";
  EXPECT_EQ(intake_from_json(text)->identity.plate, "AB12 CDE");
  EXPECT_FALSE(case_from_json(text));
}

TEST(CaseJson, APatchRemovesWithNullAndReplacesListsWhole) {
  Case record;
  record.notes = "old";
  record.symptoms.push_back({"misfire", Presence::kPresent, {}, {}, {}});
  const auto patched = patch_case(record, R"({"notes":null,"symptoms":[],"complaint":"flat"})");
  ASSERT_TRUE(patched);
  EXPECT_EQ(patched->record.notes, "");
  EXPECT_TRUE(patched->record.symptoms.empty());
  EXPECT_EQ(patched->record.complaint, "flat");
}

struct Broken {
  const char *name, *json, *place;
};

TEST(CaseRules, NameThePlace) {
  const Vocabulary vocabulary = *Vocabulary::built_in();
  const Broken table[] = {
      {"closed before opened",
       R"({"state":"closed","opened":"2026-03-02","closed":"2026-03-01","cause":{"component":"turbocharger","failure":"worn"}})",
       "/closed"},
      {"closed without cause", R"({"state":"closed","opened":"2026-03-02","closed":"2026-03-02"})",
       "/cause"},
      {"negative mileage", R"({"state":"open","opened":"2026-03-02","vehicle":{"mileage_km":-1}})",
       "/vehicle/mileage_km"},
      {"unknown symptom", R"({"state":"open","opened":"2026-03-02","symptoms":[{"id":"sings"}]})",
       "/symptoms/0/id"},
      {"bad code", R"({"state":"open","opened":"2026-03-02","codes":[{"code":"P02G9"}]})",
       "/codes/0/code"},
      {"cause of an open case",
       R"({"state":"open","opened":"2026-03-02","cause":{"component":"turbocharger","failure":"worn"}})",
       "/cause"},
      {"outcome before closing",
       R"({"state":"open","opened":"2026-03-02","outcome":{"status":"unknown"}})", "/outcome"},
      {"codes, but no scan",
       R"({"state":"open","opened":"2026-03-02","scanned":"no","codes":[{"code":"P0299"}]})",
       "/codes"},
      {"complaint on a service visit",
       R"({"state":"no_complaint","opened":"2026-03-02","complaint":"flat"})", "/state"}};
  for (const Broken& broken : table) {
    const auto record = case_from_json(broken.json);
    ASSERT_TRUE(record) << broken.name << describe(record.error());
    const auto problems = broken_rules(*record, vocabulary);
    ASSERT_EQ(problems.size(), 1U) << broken.name;
    EXPECT_EQ(problems.front().place, broken.place) << broken.name;
  }
}

}  // namespace
}  // namespace shoplore
