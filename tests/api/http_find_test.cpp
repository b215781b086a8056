// Finding, the vocabulary and recognising over HTTP.
#include <gtest/gtest.h>

#include <set>

#include "tests/api/http_shop.hpp"

namespace shoplore {
namespace {

using nlohmann::json;
using testing::expect_problem;
using HttpFind = testing::HttpShop;

TEST_F(HttpFind, FindsAsTheCommandLineDoes) {
  const auto reply =
      get("/v1/find?q=flat%20uphill&make=Brackwater&model_year_low=2014&model_year_high=2018"
          "&mileage_km_low=100000&closed_since=2026-01-01&proof=seen,measured&limit=3");
  ASSERT_TRUE(reply && reply->status == 200) << reply->body;
  EXPECT_EQ(reply->body + "\n",
            shop_
                .run({"find", "flat uphill", "--make", "Brackwater", "--year", "2014..2017",
                      "--mileage", "100000..", "--closed-since", "2026-01-01", "--proof",
                      "seen,measured", "--page-size", "3", "--json"})
                .out);
}

TEST_F(HttpFind, PagesOfOneAreThePageOfAll) {
  json seen = json::array();
  std::string cursor;
  do {
    const json page = read("/v1/find?q=flat&limit=1" + (cursor.empty() ? "" : "&cursor=" + cursor));
    seen.insert(seen.end(), page["cases"].begin(), page["cases"].end());
    cursor = page["next_cursor"];
  } while (!cursor.empty());
  EXPECT_EQ(seen.size(), 8U);
  EXPECT_EQ(seen, read("/v1/find?q=flat")["cases"]);
}

TEST_F(HttpFind, WrongSearchesAreRefusedByName) {
  struct Row {
    std::string query, place;
  };
  for (const auto& [query, place] :
       std::vector<Row>{{"", "?q"},
                        {"?q=", "?q"},
                        {"?q=...", "?q"},
                        {"?q=%ff", "?q"},
                        {"?q=flat&words=x", "?words"},
                        {"?q=flat&limit=101", "?limit"},
                        {"?q=flat&limit=0", "?limit"},
                        {"?q=flat&proof=guessed", "?proof"},
                        {"?q=flat&model_year_low=1949", "?model_year_low"},
                        {"?q=flat&model_year_low=2016&model_year_high=2016", "?model_year_low"},
                        {"?q=flat&mileage_km_low=2&mileage_km_high=1", "?mileage_km_low"},
                        {"?q=flat&mileage_km_low=-1", "?mileage_km_low"},
                        {"?q=flat&closed_since=2026-02-30", "?closed_since"},
                        {"?q=flat&cursor=1-2-3", "?cursor"}}) {
    expect_problem(get("/v1/find" + query), 400, place);
  }
}

TEST_F(HttpFind, AnEntryIsFoundByWordsAndReadByItsId) {
  const json page = read("/v1/vocabulary?kind=check&q=wastegate%20linkage%20hand");
  ASSERT_EQ(page["matches"], 1);
  EXPECT_EQ(page["entries"][0]["id"], "wastegate_linkage_by_hand");
  const auto entry = get("/v1/vocabulary/check/wastegate_linkage_by_hand");
  ASSERT_TRUE(entry && entry->status == 200);
  EXPECT_EQ(json::parse(entry->body), page["entries"][0]);
  const auto again = get("/v1/vocabulary/check/wastegate_linkage_by_hand",
                         {{"If-None-Match", entry->get_header_value("ETag")}});
  ASSERT_TRUE(again);
  EXPECT_EQ(again->status, 304);
}

TEST_F(HttpFind, PagesOfTheVocabularyShowEveryEntryOnce) {
  std::size_t seen = 0;
  std::string cursor;
  std::set<std::string> ids;
  json page;
  do {
    page =
        read("/v1/vocabulary?kind=failure&limit=7" + (cursor.empty() ? "" : "&cursor=" + cursor));
    for (const json& entry : page["entries"]) ids.insert(entry["id"]);
    seen += page["entries"].size();
    cursor = page["next_cursor"];
  } while (!cursor.empty());
  EXPECT_EQ(page["matches"], seen);
  EXPECT_EQ(ids.size(), seen);
  EXPECT_GT(seen, 7U);
}

TEST_F(HttpFind, WhatTheVocabularyLacksIsNotFound) {
  for (const char* path : {"/v1/vocabulary/check/none", "/v1/vocabulary/colour/red",
                           "/v1/vocabulary/check/", "/v1/vocabulary/check"}) {
    expect_problem(get(path), 404);
  }
  expect_problem(get("/v1/vocabulary?kind=colour"), 400, "?kind");
  expect_problem(get("/v1/vocabulary?kind=check,symptom"), 400, "?kind");
}

TEST_F(HttpFind, WhatIsRecognisedIsWhatAnAnswerUnderstands) {
  for (const char* text : {"2016 Brackwater P0299 142k foo, no whistle", "zzz",
                           "P0299 rang 0151 496 0123, turbo replaced elsewhere"}) {
    const auto reply = post("/v1/recognise", json{{"text", text}}.dump());
    ASSERT_TRUE(reply && reply->status == 200) << reply->body;
    EXPECT_EQ(json::parse(reply->body), ask(text)["understood"]) << text;
    EXPECT_EQ(reply->body.find("0151"), std::string::npos);
  }
}

TEST_F(HttpFind, WhatIsNoTextIsNotRecognised) {
  for (const char* body : {"{}", R"({"text":""})", R"({"text":" \n"})", R"({"text":7})", "[]", "",
                           R"({"text":"a","text":"b"})"}) {
    expect_problem(post("/v1/recognise", body), 400);
  }
  expect_problem(post("/v1/recognise", R"({"text":"a","colour":"red"})"), 400, "/colour");
  expect_problem(post("/v1/recognise", json{{"text", std::string(20'001, 'x')}}.dump()), 400,
                 "/text");
  EXPECT_EQ(post("/v1/recognise", json{{"text", std::string(20'000, 'x')}}.dump())->status, 200);
}

}  // namespace
}  // namespace shoplore
