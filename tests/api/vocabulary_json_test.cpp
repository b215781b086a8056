#include "api/wire/vocabulary_json.hpp"

#include <gtest/gtest.h>

#include <array>
#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

using nlohmann::json;

TEST(VocabularyJson, APlainEntryHasKindIdNameAndPhrases) {
  Entry entry;
  entry.kind = EntryKind::kVerification;
  entry.id = "road_test";
  entry.name = "road test";
  EXPECT_EQ(entry_json(entry),
            R"({"kind":"verification","id":"road_test","name":"road test","phrases":[]})");
}

TEST(VocabularyJson, EveryFieldOfAnEntryIsShown) {
  Entry entry;
  entry.kind = EntryKind::kCheck;
  entry.id = "a";
  entry.name = "b";
  entry.phrases = {"c"};
  entry.retired = "d";
  entry.alias_of = "e";
  entry.cautions = {"f"};
  entry.removals = {"g"};
  entry.components = {"h"};
  entry.afterwards = {"p"};
  entry.minutes = 5;
  entry.unit = "V";
  entry.low = 10;
  entry.high = 12.5;
  entry.where = "i";
  entry.conditions = {"j"};
  entry.how = "k";
  entry.expands_to = "l";
  entry.source = "m";
  entry.make = "n";
  entry.engine_families = {"o"};
  EXPECT_EQ(json::parse(entry_json(entry)),
            json::parse(R"({"kind":"check","id":"a","name":"b","phrases":["c"],"retired":"d",
      "alias_of":"e","cautions":["f"],"removals":["g"],"components":["h"],"afterwards":["p"],"minutes":5.0,"unit":"V",
      "low":10.0,"high":12.5,"where":"i","conditions":["j"],"how":"k","expands_to":"l",
      "source":"m","make":"n","engine_families":["o"]})"));
}

TEST(VocabularyJson, APageTellsHowManyThereAre) {
  Entry entry;
  entry.id = "a";
  const std::array<const Entry*, 1> page = {&entry};
  const auto shown = json::parse(vocabulary_page_json(page, 57, "1-x"));
  EXPECT_EQ(shown["entries"].size(), 1U);
  EXPECT_EQ(shown["matches"], 57);
  EXPECT_EQ(shown["next_cursor"], "1-x");
}

}  // namespace
}  // namespace shoplore
