// Patterns as a person meets them on the command line, wall sheet included.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/api/shop.hpp"

namespace shoplore::testing {
namespace {

using nlohmann::json;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

// Sixty hoses that whistle, sixty linkages that do not, beside the eight of the shop.
void fill(const TestShop& shop) {
  std::string lines;
  for (int i = 0; i < 60; ++i) {
    const std::string number = std::to_string(i);
    lines += closed_case("hose-" + number, "charge_air_hose", "split", "present") + "\n";
    lines += closed_case("link-" + number, "wastegate_linkage", "seized_open", "absent") + "\n";
  }
  ASSERT_EQ(shop.run({"import", "-"}, lines).exit_code, 0);
}

std::string text_of(const std::filesystem::path& file) {
  std::stringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}

TEST(PatternsVerb, FewCasesAreTooFewAndItSaysFromWhen) {
  const TestShop shop;
  const Ended text = shop.run({"patterns"});
  EXPECT_EQ(text.exit_code, 1);
  EXPECT_SAYS(text.out, "8 closed cases are too few");
  EXPECT_SAYS(text.out, "about 100");
  const Ended as_json = shop.run({"patterns", "--json"});
  EXPECT_EQ(as_json.exit_code, 1);
  EXPECT_EQ(json::parse(as_json.out)["enough"], false);
}

TEST(PatternsVerb, WhatRecursIsCountedAndOpensToItsCases) {
  const TestShop shop;
  fill(shop);
  const Ended text = shop.run({"patterns", "--cause", "charge_air_hose:split", "--cases"});
  EXPECT_EQ(text.exit_code, 0) << text.err;
  EXPECT_SAYS(text.out, "whistle under load");
  EXPECT_SAYS(text.out, "in 62 of 62 (");
  EXPECT_SAYS(text.out, "otherwise in 0 of 66");
  EXPECT_SAYS(text.out, "hose-59");
  const json page = json::parse(shop.run({"patterns", "--engine-family", "bw16d", "--json"}).out);
  EXPECT_EQ(page["cases"], 128);
  EXPECT_EQ(page["scope"]["name"], "engine family BW16D");
  for (const json& pattern : page["patterns"]) {
    EXPECT_EQ(pattern["cases"].size(), pattern["share"]["count"]);
  }
}

TEST(PatternsVerb, TheLimitIsOfEachKindAndAllTakesItAway) {
  const TestShop shop;
  fill(shop);
  const auto count = [&](const std::vector<std::string>& more) {
    std::vector<std::string> words{"patterns", "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const json page = json::parse(shop.run(words).out);
    return std::pair(page["patterns"].size(), page["matches"].get<std::size_t>());
  };
  EXPECT_EQ(count({"--limit", "1"}).first, 1U);
  const auto all = count({"--all"});
  EXPECT_EQ(all.first, all.second);
  EXPECT_GT(all.first, 1U);
}

TEST(PatternsVerb, BadInputIsNamedWithWhatToDo) {
  const TestShop shop;
  const struct {
    std::vector<std::string> words;
    const char* says;
  } rows[] = {{{"--engine-family", "XX99"}, "--engine-family: \"XX99\" is in no closed case"},
              {{"--engine-family", "XX99"}, "there are: BW16D"},
              {{"--make", "Nosuch"}, "--make: \"Nosuch\" is in no closed case"},
              {{"--cause", "charge_air_hose"}, "expected component:failure"},
              {{"--cause", "flux:split"}, "\"flux\" is not a known component"},
              {{"--limit", "0"}, "--limit"},
              {{"--limit", "3", "--all"}, "--limit"},
              {{"--sheet", "x.html", "--json"}, "--json"}};
  for (const auto& row : rows) {
    std::vector<std::string> words{"patterns"};
    words.insert(words.end(), row.words.begin(), row.words.end());
    const Ended ended = shop.run(words);
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_EQ(ended.out, "");
    EXPECT_SAYS(ended.err, row.says);
  }
}

TEST(PatternsVerb, TheWallSheetStandsByItself) {
  const TestShop shop;
  fill(shop);
  const std::string file = (shop.around() / "sheet.html").string();
  const Ended ended = shop.run({"patterns", "--sheet", file});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_SAYS(ended.out, "written to " + file);
  const std::string html = text_of(file);
  EXPECT_SAYS(html, "<h2>engine family BW16D</h2>");
  EXPECT_SAYS(html, "<td class=\"cause\">charge-air hose, split</td>");
  EXPECT_SAYS(html, "62 of 62");
  EXPECT_SAYS(html, "Counts are evidence, not a diagnosis");
  for (const char* never : {"<script", "http", "src=", "url(", "@import"}) {
    EXPECT_EQ(html.find(never), std::string::npos) << never;
  }
  EXPECT_EQ(shop.run({"patterns", "--sheet", "/nowhere/at/all.html"}).exit_code, 2);
}

TEST(PatternsVerb, ASheetOfTooFewCasesIsNotWritten) {
  const TestShop shop;
  const auto file = shop.around() / "sheet.html";
  EXPECT_EQ(shop.run({"patterns", "--sheet", file.string()}).exit_code, 1);
  EXPECT_FALSE(std::filesystem::exists(file));
}

}  // namespace
}  // namespace shoplore::testing
