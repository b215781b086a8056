#include "indexer/vocabulary_search.hpp"

#include <gtest/gtest.h>

#include <string>

namespace shoplore {
namespace {

using Ids = std::vector<std::string>;

Vocabulary sample() {
  return Vocabulary::parse({{"checks.json", R"({"kind":"check","entries":[
                 {"id":"linkage_by_hand","name":"move the wastegate linkage by hand",
                  "phrases":["moved the rod"]},
                 {"id":"boost_logged","name":"boost asked for and reached, logged"},
                 {"id":"old_look","name":"old look at the linkage","retired":"twice the same"}]})"},
                            {"components.json", R"({"kind":"component","entries":[
                 {"id":"wastegate_linkage","name":"wastegate linkage"},
                 {"id":"linkage","name":"linkage of the blower"}]})"},
                            {"shorthand.json", R"({"kind":"shorthand","entries":[
                 {"id":"cel","name":"CEL","expands_to":"engine light"}]})"}})
      .value();
}

Ids found(std::string_view words, std::optional<EntryKind> kind = {}) {
  static const Vocabulary vocabulary = sample();
  Ids ids;
  for (const Entry* entry : search_vocabulary(vocabulary, kind, words)) ids.push_back(entry->id);
  return ids;
}

TEST(VocabularySearch, EveryWordMustBeginOneOfTheEntrys) {
  EXPECT_EQ(found("linkag hand"), Ids{"linkage_by_hand"});
  EXPECT_EQ(found("wastegate"), (Ids{"linkage_by_hand", "wastegate_linkage"}));
  EXPECT_EQ(found("linkage zebra"), Ids{});
  EXPECT_EQ(found("inkage"), Ids{}) << "the middle of a word is not its beginning";
}

TEST(VocabularySearch, LooksAtPhrasesIdsAndExpansions) {
  EXPECT_EQ(found("rod"), Ids{"linkage_by_hand"});
  EXPECT_EQ(found("BOOST_LOGGED"), Ids{"boost_logged"});
  EXPECT_EQ(found("engine light"), Ids{"cel"});
  EXPECT_EQ(found("logging"), Ids{"boost_logged"}) << "stems are compared";
}

TEST(VocabularySearch, RetiredEntriesAreFoundToo) {
  EXPECT_EQ(found("old"), Ids{"old_look"});
}

TEST(VocabularySearch, TheEntryOfThatVeryNameComesFirst) {
  EXPECT_EQ(found("linkage").front(), "linkage");
  EXPECT_EQ(found("wastegate linkage").front(), "wastegate_linkage");
}

TEST(VocabularySearch, AKindLeavesOutTheOthersAndNoWordsFindAll) {
  EXPECT_EQ(found("linkage", EntryKind::kComponent), (Ids{"linkage", "wastegate_linkage"}));
  EXPECT_EQ(found("").size(), 6U);
  EXPECT_EQ(found("", EntryKind::kShorthand), Ids{"cel"});
}

}  // namespace
}  // namespace shoplore
