#include "api/wire/request_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

// Stands for the shop's key.
Result<std::string> token_of(const Identity& identity) {
  if (identity.vin == "bad") return fail(ErrorCode::kInvalidInput, "/identity/vin", "is no VIN");
  return "token of " + identity.vin + identity.plate;
}

TEST(RequestJson, ReadsAWholeQuestion) {
  const auto question = question_from_json(R"({"text":"P0299 flat",
      "record":{"schema":1,"state":"open","opened":"2026-03-02","scanned":"yes"},
      "filter":{"engine_family":"BW16D","mileage_km":{"low":100000,"high":150000},
                "model_year":{"high":2017},"closed_since":"2024-01-01","proof":["seen"]},
      "rows":7,"similar_cases":0})",
                                           token_of);
  ASSERT_TRUE(question) << describe(question.error());
  EXPECT_EQ(question->text, "P0299 flat");
  EXPECT_EQ(question->record.scanned, YesNo::kYes);
  EXPECT_EQ(question->filter.engine_family, "BW16D");
  EXPECT_EQ(question->filter.mileage.low, Kilometres{100'000});
  EXPECT_EQ(question->filter.mileage.high, Kilometres{150'000});
  EXPECT_EQ(question->filter.model_year.low, std::nullopt);
  EXPECT_EQ(question->filter.model_year.high, 2017);
  EXPECT_EQ(question->filter.closed_since, *parse_date("2024-01-01"));
  EXPECT_EQ(question->filter.proofs, std::set<Proof>{Proof::kSeen});
  EXPECT_EQ(question->rows, 7u);
  EXPECT_EQ(question->similar_cases, 0u);
}

TEST(RequestJson, TextAloneIsAQuestion) {
  const auto question = question_from_json(R"({"text":"flat"})", token_of);
  ASSERT_TRUE(question);
  EXPECT_EQ(question->rows, 5u);
  EXPECT_EQ(question->similar_cases, 5u);
  EXPECT_EQ(question->vehicle, "");
}

TEST(RequestJson, OfAnIdentityOnlyTheVehiclesPseudonymIsLeft) {
  const auto question =
      question_from_json(R"({"text":"flat","identity":{"plate":"AB 12"}})", token_of);
  ASSERT_TRUE(question);
  EXPECT_EQ(question->vehicle, "token of AB 12");
}

struct RefusedRow {
  const char* name;
  const char* text;
  const char* place;
};

const RefusedRow kRefusedQuestions[] = {
    {"unknown field", R"({"text":"x","colour":1})", "/colour"},
    {"text is a number", R"({"text":7})", "/text"},
    {"rows 0", R"({"text":"x","rows":0})", "/rows"},
    {"rows 51", R"({"text":"x","rows":51})", "/rows"},
    {"open is no list", R"({"text":"x","open":"plug_cover"})", "/open"},
    {"not possible holds a number", R"({"text":"x","not_possible":[7]})", "/not_possible/0"},
    {"agreed is no yes or no", R"({"text":"x","agreed":"perhaps"})", "/agreed"},
    {"similar cases -1", R"({"text":"x","similar_cases":-1})", "/similar_cases"},
    {"unknown filter", R"({"text":"x","filter":{"brand":"x"}})", "/filter/brand"},
    {"filter date", R"({"text":"x","filter":{"closed_since":"2026-02-30"}})",
     "/filter/closed_since"},
    {"record's field", R"({"record":{"state":"open","opened":"2026-03-02","colour":1}})",
     "/record/colour"},
    {"record without a day", R"({"record":{"state":"open"}})", "/record/opened"},
    {"identity's customer", R"({"text":"x","identity":{"customer":"y"}})", "/identity/customer"},
    {"identity's VIN", R"({"text":"x","identity":{"vin":"bad"}})", "/identity/vin"},
    {"a list", "[]", ""},
    {"malformed", "{", ""},
};

TEST(RequestJson, RefusesQuestionsNamingThePlace) {
  for (const RefusedRow& row : kRefusedQuestions) {
    SCOPED_TRACE(row.name);
    const auto question = question_from_json(row.text, token_of);
    ASSERT_FALSE(question);
    EXPECT_EQ(question.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(question.error().place, row.place);
  }
}

TEST(RequestJson, ClosingIsAMergePatchWithTodayByDefault) {
  const auto patch = closing_patch_from_json(R"({"cause":{"component":"a","failure":"b"}})",
                                             *parse_date("2026-03-04"));
  ASSERT_TRUE(patch);
  EXPECT_EQ(nlohmann::json::parse(*patch), nlohmann::json::parse(R"({"state":"closed",
      "closed":"2026-03-04","cause":{"component":"a","failure":"b"}})"));
}

TEST(RequestJson, ClosingKeepsTheDayGiven) {
  const auto patch =
      closing_patch_from_json(R"({"closed":"2026-03-01","cause":{}})", *parse_date("2026-03-04"));
  ASSERT_TRUE(patch);
  EXPECT_EQ(nlohmann::json::parse(*patch)["closed"], "2026-03-01");
}

const RefusedRow kRefusedClosings[] = {
    {"without a cause", "{}", "/cause"},
    {"opened", R"({"cause":{},"opened":"2026-03-02"})", "/opened"},
    {"state", R"({"cause":{},"state":"open"})", "/state"},
    {"a text", "\"x\"", ""},
};

TEST(RequestJson, RefusesClosingsNamingThePlace) {
  for (const RefusedRow& row : kRefusedClosings) {
    SCOPED_TRACE(row.name);
    const auto patch = closing_patch_from_json(row.text, *parse_date("2026-03-04"));
    ASSERT_FALSE(patch);
    EXPECT_EQ(patch.error().place, row.place);
  }
}

}  // namespace
}  // namespace shoplore
