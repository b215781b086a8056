// `shoplore vocabulary` as a person meets it, and what it does to counts: nothing a case was
// recorded with is lost, and taking back brings the former counts back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::Ended;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::TestShop;

Ended vocabulary(const TestShop& shop, std::vector<std::string> words) {
  words.insert(words.begin(), "vocabulary");
  return shop.run(words);
}

// The answer but for what was typed: counts, ranking, widths.
json counts(const TestShop& shop, const std::string& question) {
  const Ended ended = shop.run({"ask", question, "--json", "--similar-cases", "0"});
  EXPECT_NE(ended.exit_code, 2) << ended.err;
  json answer = json::parse(ended.out);
  answer.erase("understood");
  answer.erase("revision");
  return answer;
}

// A shop whose hose cases (two of eight) were recorded with a word of its own.
void record_own_word(const TestShop& shop, const std::string& id) {
  for (const char* ref : {"old-7", "old-8"}) {
    const Ended ended = shop.run({"add", "--to", ref, "--json", "-"},
                                 R"({"symptoms":[{"id":")" + id + R"(","state":"present"}]})");
    EXPECT_EQ(ended.exit_code, 0) << ended.err;
  }
}

TEST(VocabularyVerb, AnAliasCountsAsIfRecordedUnderTheOtherIdAndUndoBringsTheFormerCountsBack) {
  const TestShop shop, other;
  for (const TestShop* each : {&shop, &other}) {
    const Ended added = vocabulary(*each, {"add", "symptom", "zwump", "--name", "zwump"});
    ASSERT_EQ(added.exit_code, 0) << added.err;
  }
  record_own_word(shop, "zwump");
  record_own_word(other, "hesitation");
  const char* question = "P0299 hesitation";
  const json before = counts(shop, question);
  ASSERT_EQ(vocabulary(shop, {"alias", "symptom", "zwump", "--to", "hesitation"}).exit_code, 0);
  const Ended first = shop.run({"ask", question});
  EXPECT_THAT(first.err, HasSubstr("the vocabulary changed"));
  EXPECT_EQ(shop.run({"ask", question}).err, "");
  EXPECT_EQ(counts(shop, question), counts(other, question));
  EXPECT_NE(counts(shop, question), before);
  EXPECT_EQ(counts(shop, "P0299 zwump"), counts(shop, question));
  EXPECT_THAT(shop.exported(), HasSubstr(R"("id":"zwump")"));
  EXPECT_EQ(shop.run({"verify"}).exit_code, 0);
  ASSERT_EQ(vocabulary(shop, {"alias", "symptom", "zwump", "--undo"}).exit_code, 0);
  EXPECT_EQ(counts(shop, question), before);
}

TEST(VocabularyVerb, ARetiredEntryIsShownAndCountedButNoLongerRecognisedOrOffered) {
  const TestShop shop;
  const std::vector<std::string> record = {"show", "old-7"};
  const std::string shown = shop.run(record).out;
  EXPECT_THAT(shown, HasSubstr("whistle under load"));
  // Another open case has the finding recorded, so asking by it does not need the words.
  ASSERT_EQ(shop.run({"add", "--json", "-"},
                     R"({"ref":"new-1","state":"open","opened":"2026-03-02",)"
                     R"("symptoms":[{"id":"whistle_under_load","state":"present"}]})")
                .exit_code,
            0);
  const auto asked = [&shop] {
    json answer = json::parse(shop.run({"ask", "--case", "new-1", "--json"}).out);
    answer.erase("revision");
    return answer;
  };
  const json before = asked();
  EXPECT_EQ(before["breadth"].back()["cases"], 2);
  const Ended retired =
      vocabulary(shop, {"retire", "symptom", "whistle_under_load", "--reason", "too vague"});
  ASSERT_EQ(retired.exit_code, 0) << retired.err;
  EXPECT_EQ(shop.run(record).out, shown);
  EXPECT_EQ(asked(), before);
  const auto understood =
      json::parse(shop.run({"ask", "P0299 whistle", "--json"}).out)["understood"];
  EXPECT_EQ(understood["not_understood"], json::array({"whistle"}));
  EXPECT_THAT(understood["suggestions"].dump(), Not(HasSubstr("whistle_under_load")));
  EXPECT_EQ(vocabulary(shop, {"search", "whistle", "under", "load"}).exit_code, 1);
  EXPECT_THAT(vocabulary(shop, {"search", "whistle", "--all"}).out,
              HasSubstr("[retired: too vague]"));
  ASSERT_EQ(vocabulary(shop, {"retire", "symptom", "whistle_under_load", "--undo"}).exit_code, 0);
  EXPECT_THAT(shop.run({"ask", "P0299 whistle"}).out, Not(HasSubstr("Not understood")));
}

TEST(VocabularyVerb, AnAddedWordIsUnderstoodAtTheNextQuestion) {
  const TestShop shop;
  EXPECT_THAT(shop.run({"ask", "P0299 zwumps"}).out, HasSubstr("Not understood  \"zwumps\""));
  const Ended added = vocabulary(
      shop, {"add", "symptom", "zwump", "--name", "zwump at speed", "--phrase", "zwumps"});
  ASSERT_EQ(added.exit_code, 0) << added.err;
  EXPECT_THAT(added.out, HasSubstr("restart it"));
  EXPECT_THAT(shop.run({"ask", "P0299 zwumps"}).out, Not(HasSubstr("Not understood")));
  EXPECT_THAT(shop.run({"ask", "P0299 zwum"}).out,
              HasSubstr("Not understood  \"zwum\" (did you mean: zwump at speed?)"));
  const auto understood = json::parse(shop.run({"ask", "P0299 zwum", "--json"}).out)["understood"];
  EXPECT_EQ(understood["suggestions"], json::parse(R"([{"word":"zwum","suggestions":[
                {"kind":"symptom","id":"zwump","name":"zwump at speed"}]}])"));
}

TEST(VocabularyVerb, ShowsAnEntryInTheFileForm) {
  const TestShop shop;
  ASSERT_EQ(vocabulary(shop, {"add", "check", "zwump", "--name", "zwump it", "--low", "-700",
                              "--high", "-500.5", "--unit", "mbar", "--minutes", "5"})
                .exit_code,
            0);
  const Ended shown = vocabulary(shop, {"show", "check", "zwump", "--json"});
  EXPECT_EQ(json::parse(shown.out), json::parse(R"({"id":"zwump","name":"zwump it","minutes":5,
      "unit":"mbar","low":-700,"high":-500.5})"));
  std::ifstream file(shop.folder() / "vocabulary" / "check.json");
  EXPECT_EQ(json::parse(file)["entries"][0], json::parse(shown.out));
}

TEST(VocabularyVerb, RefusesByNameAndChangesNothing) {
  const TestShop shop;
  struct Row {
    std::vector<std::string> words;
    const char* says;
  };
  const Row rows[] = {
      {{"add", "smell", "x", "--name", "x"}, "expected one of symptom, condition"},
      {{"search", "x", "--kind", "smell"}, "--kind: "},
      {{"show", "symptom", "lack_power"}, "near it: lack_of_power"},
      {{"retire", "symptom", "lack_power", "--reason", "x"}, "near it: lack_of_power"},
      {{"alias", "symptom", "lack_power", "--to", "misfire"}, "near it: lack_of_power"},
      {{"alias", "symptom", "misfire", "--to", "lack_power"}, "near it: lack_of_power"},
      {{"retire", "symptom", "misfire"}, "--reason: is needed"},
      {{"alias", "symptom", "misfire"}, "--to: is needed"},
      {{"retire", "symptom", "misfire", "--undo", "--reason", "x"}, "--reason"},
      {{"retire", "symptom", "misfire", "--undo"}, "entry 'misfire': is not retired"},
      {{"add", "symptom", "misfire", "--phrase", "gutless"}, "'lack_of_power' (gutless)"},
      {{"add", "symptom", "misfire", "--phrase", "Zwump"}, "'Zwump' is not in lower case"},
      {{"add", "symptom", "misfire", "--phrase", "..."}, "a phrase without a word"},
      {{"add", "symptom", "misfire", "--phrase", "caf\xe9"}, "UTF-8"},
      {{"add", "symptom", "misfire", "--phrase", "ask jo@example.org"}, "e-mail"},
      {{"add", "symptom", "misfire", "--minutes", "5"}, "minutes: not a field of a symptom"},
      {{"add", "check", "zwump", "--name", "zwump", "--minutes", "-5"}, "may not be negative"},
      {{"add", "check", "zwump", "--name", "zwump", "--minutes", "many"}, "--minutes"},
      {{"add", "check", "zwump", "--name", "zwump", "--removal", "nothing"}, "'nothing'"},
      {{"add", "symptom", "Zwump", "--name", "zwump"}, "entry 'Zwump': id:"},
      {{"add", "symptom", "../../zwump", "--name", "zwump"}, "id:"},
      {{"add", "symptom", "zwump"}, "name: a new symptom needs one"},
      {{}, "expected search, show, add, retire or alias"},
      {{"search"}, "expected words"},
  };
  for (const Row& row : rows) {
    const Ended ended = vocabulary(shop, row.words);
    EXPECT_EQ(ended.exit_code, 2) << row.says << ended.out;
    EXPECT_THAT(ended.err, HasSubstr("shoplore vocabulary")) << row.says;
    EXPECT_THAT(ended.err, HasSubstr(row.says));
    EXPECT_EQ(ended.out, "") << row.says;
  }
  for (const auto& each : fs::directory_iterator(shop.folder() / "vocabulary")) {
    EXPECT_EQ(each.path().filename(), "lock");
  }
}

TEST(VocabularyVerb, NoMatchIsExitCodeOneAndNoShopIsAnError) {
  const TestShop shop;
  EXPECT_EQ(vocabulary(shop, {"search", "zwump"}).exit_code, 1);
  EXPECT_EQ(vocabulary(shop, {"search", "flat"}).exit_code, 0);
  const std::string nowhere = (shop.around() / "nowhere").string();
  for (const char* verb : {"show", "retire"}) {
    std::vector<std::string> words = {SHOPLORE_BINARY, "--shop", nowhere, "vocabulary", verb,
                                      "symptom",       "misfire"};
    if (verb == std::string("retire")) words.insert(words.end(), {"--reason", "x"});
    EXPECT_EQ(testing::run_program({words, ""}).exit_code, 2) << verb;
  }
  EXPECT_FALSE(fs::exists(nowhere));
}

}  // namespace
}  // namespace shoplore
