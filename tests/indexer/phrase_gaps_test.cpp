#include "indexer/phrase_gaps.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(PhraseGaps, WordsOfNoWeightStandBetweenButNothingThatJoins) {
  for (const char* word : {"is", "the", "by"}) {
    EXPECT_TRUE(may_stand_between(EntryKind::kSymptom, word)) << word;
  }
  for (const char* word : {"turbo", "and", "but"}) {
    EXPECT_FALSE(may_stand_between(EntryKind::kSymptom, word)) << word;
  }
}

TEST(PhraseGaps, AVerdictStandsOnlyInsideACheck) {
  EXPECT_TRUE(may_stand_between(EntryKind::kCheck, "ok"));
  EXPECT_FALSE(may_stand_between(EntryKind::kCondition, "ok"));
}

TEST(PhraseGaps, OnlyASymptomIsDeniedFromWithin) {
  const auto at = [](const char* first, const char* second) {
    std::vector<Token> tokens(2);
    tokens[0].text = first;
    tokens[1].text = second;
    return tokens;
  };
  EXPECT_TRUE(denies_within(EntryKind::kSymptom, at("not", "soft"), 0));
  EXPECT_TRUE(denies_within(EntryKind::kSymptom, at("no", "longer"), 0));
  EXPECT_TRUE(denies_within(EntryKind::kSymptom, at("stopped", "squealing"), 0));
  EXPECT_FALSE(denies_within(EntryKind::kSymptom, at("no", "power"), 0));
  EXPECT_FALSE(denies_within(EntryKind::kSymptom, at("stopped", "twice"), 0));
  EXPECT_FALSE(denies_within(EntryKind::kCheck, at("not", "soft"), 0));
}

TEST(PhraseGaps, WordsThatNeedTheirPlaceCountForNothing) {
  EXPECT_EQ(heavy_words({"heavi", "steer"}), 2U);
  EXPECT_EQ(heavy_words({"on", "two"}), 0U);
  EXPECT_EQ(heavy_words({"hold", "back"}), 1U);
}

}  // namespace
}  // namespace shoplore
