#include "indexer/conditioned_phrases.hpp"

#include <gtest/gtest.h>

#include "indexer/vocabulary.hpp"

namespace shoplore {
namespace {

const Vocabulary& knocks() {
  static const Vocabulary loaded = *Vocabulary::parse(
      {{"symptoms",
        R"({"kind":"symptom","entries":[)"
        R"({"id":"suspension_knock","name":"knock over bumps","phrases":["rattles over bumps"]},)"
        R"({"id":"trim_rattle","name":"trim noise","phrases":["rattles on bumps"]},)"
        R"({"id":"front_knock","name":"front end knocks over bumps"},)"
        R"({"id":"runs_badly","name":"runs over bumps"}]})"},
       {"conditions", R"({"kind":"condition","entries":[{"id":"bumps","name":"over bumps",)"
                      R"("phrases":["on bumps","over potholes"]},)"
                      R"({"id":"cold","name":"when cold"}]})"}});
  return loaded;
}

std::vector<std::string> symptoms_in(const char* text) {
  static const PhraseMatcher matcher(knocks());
  static const ConditionedPhrases phrases(matcher);
  const auto tokens = matcher.tokens_of(text, {});
  const std::vector<char> claimed(tokens.size(), 0);
  std::vector<std::string> ids;
  for (const PhraseMatch& match :
       phrases.matches(tokens, matcher.matches(tokens, claimed, {EntryKind::kCondition}))) {
    ids.push_back(match.id);
  }
  return ids;
}

TEST(ConditionedPhrases, TheConditionMayBePutAnotherWay) {
  struct Row {
    const char *text, *id;
  };
  for (const Row& row : {Row{"knocks over potholes", "suspension_knock"},
                         Row{"a knock on bumps", "suspension_knock"},
                         Row{"knocks a bit over potholes", "suspension_knock"},
                         Row{"front end knocks over potholes", "front_knock"}}) {
    EXPECT_EQ(symptoms_in(row.text), std::vector<std::string>{row.id}) << row.text;
  }
}

TEST(ConditionedPhrases, AnotherConditionAPartingAVagueWordOrTwoOwnersFindNothing) {
  for (const char* text :
       {"knocks when cold", "knocks, over potholes", "knocks", "over potholes",
        "knocks badly misfires over potholes", "runs over potholes", "rattles over potholes"}) {
    EXPECT_EQ(symptoms_in(text), std::vector<std::string>{}) << text;
  }
}

}  // namespace
}  // namespace shoplore
