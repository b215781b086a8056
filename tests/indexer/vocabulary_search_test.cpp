#include "indexer/vocabulary_search.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::ElementsAre;

Vocabulary sample() {
  auto loaded = Vocabulary::parse({{"s", R"({"kind":"symptom","entries":[
          {"id":"lack_of_power","name":"lack of power","phrases":["flat","no boost"]},
          {"id":"battery_flat","name":"battery flat overnight","phrases":["flat battery"]},
          {"id":"squeal","name":"squeal from the belt","retired":"too vague"},
          {"id":"sluggish","name":"sluggish","alias_of":"lack_of_power"}]})"},
                                   {"c", R"({"kind":"component","entries":[
          {"id":"boost_hose","name":"boost hose"},{"id":"coil","name":"ignition coil"},
          {"id":"oil_pump","name":"oil pump"},{"id":"belt","name":"drive belt"}]})"}});
  EXPECT_TRUE(loaded) << describe(loaded.error());
  return *loaded;
}

std::vector<std::string> ids(const VocabularyMatches& found) {
  std::vector<std::string> out;
  for (const VocabularyMatch& match : found.matches) out.push_back(match.entry->id);
  return out;
}

TEST(VocabularySearch, AWholePhraseComesBeforeWordStarts) {
  const Vocabulary words = sample();
  const auto found = vocabulary_search(words, {"flat"});
  EXPECT_THAT(ids(found), ElementsAre("lack_of_power", "battery_flat"));
  EXPECT_EQ(found.matches[0].by, MatchedBy::kWholePhrase);
  EXPECT_EQ(found.matches[0].phrase, "flat");
  EXPECT_EQ(found.matches[1].by, MatchedBy::kWordStarts);
  EXPECT_EQ(found.matches[1].phrase, "flat battery");
}

TEST(VocabularySearch, EveryWordMustBegin) {
  const Vocabulary words = sample();
  EXPECT_THAT(ids(vocabulary_search(words, {"boo ho"})), ElementsAre("boost_hose"));
  EXPECT_THAT(ids(vocabulary_search(words, {"boost belt"})), ElementsAre());
}

TEST(VocabularySearch, AnIdIsFoundAsItIsWritten) {
  const Vocabulary words = sample();
  EXPECT_THAT(ids(vocabulary_search(words, {"oil_pump"})), ElementsAre("oil_pump"));
  EXPECT_THAT(ids(vocabulary_search(words, {"LACK_OF"})), ElementsAre("lack_of_power"));
}

TEST(VocabularySearch, OneEditIsTriedOnlyWhenNothingElseMatches) {
  const Vocabulary words = sample();
  EXPECT_THAT(ids(vocabulary_search(words, {"coil"})), ElementsAre("coil"));
  const auto found = vocabulary_search(words, {"boots hose"});
  EXPECT_THAT(ids(found), ElementsAre("boost_hose"));
  EXPECT_EQ(found.matches[0].by, MatchedBy::kOneEdit);
  EXPECT_THAT(ids(vocabulary_search(words, {"bust hose"})), ElementsAre());
}

TEST(VocabularySearch, RetiredEntriesAreShownWhenAskedFor) {
  const Vocabulary words = sample();
  EXPECT_THAT(ids(vocabulary_search(words, {"squeal"})), ElementsAre());
  VocabularySearch all{"squeal"};
  all.retired = RetiredEntries::kIncluded;
  EXPECT_THAT(ids(vocabulary_search(words, all)), ElementsAre("squeal"));
  EXPECT_THAT(ids(vocabulary_search(words, {"sluggish"})), ElementsAre("sluggish"));
}

TEST(VocabularySearch, NoWordsListAKindInOrderAndTheLimitKeepsTheCount) {
  const Vocabulary words = sample();
  VocabularySearch search;
  search.kind = EntryKind::kComponent;
  search.limit = 2;
  const auto found = vocabulary_search(words, search);
  EXPECT_THAT(ids(found), ElementsAre("belt", "boost_hose"));
  EXPECT_EQ(found.found, 4U);
}

TEST(VocabularySearch, AFilterByKindNeverAddsAMatch) {
  const Vocabulary words = sample();
  for (const char* text : {"flat", "b", "belt", "boost"}) {
    const auto everything = ids(vocabulary_search(words, {text}));
    for (const auto& [kind, name] : kEnumNames<EntryKind>) {
      for (const std::string& id : ids(vocabulary_search(words, {text, kind}))) {
        EXPECT_THAT(everything, ::testing::Contains(id)) << text << " " << name;
      }
    }
  }
}

TEST(VocabularySearch, NearIdsAreTheNearestFirst) {
  const Vocabulary words = sample();
  EXPECT_THAT(near_ids(words, EntryKind::kSymptom, "lack_of_powr"), ElementsAre("lack_of_power"));
  EXPECT_THAT(near_ids(words, EntryKind::kSymptom, "power"), ElementsAre("lack_of_power"));
  EXPECT_THAT(near_ids(words, EntryKind::kComponent, "coli"), ElementsAre("coil"));
  EXPECT_THAT(near_ids(words, EntryKind::kSymptom, "squeal"), ElementsAre());
  EXPECT_THAT(near_ids(words, EntryKind::kSymptom, "zzzz"), ElementsAre());
}

}  // namespace
}  // namespace shoplore
