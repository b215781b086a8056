#include "indexer/clause_marks.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

// Whether the first two words are parted.
bool parts(std::string_view text) {
  const auto words = words_of(text);
  return ends_clause(text, words.at(0), words.at(1));
}

TEST(ClauseMarks, PunctuationDashesAndLinesEndAClause) {
  for (const char* text :
       {"hot, cold", "hot. cold", "hot; cold", "hot! cold", "hot? cold", "hot\ncold", "hot | cold",
        "hot - cold", "hot -- cold", "hot \u2013 cold", "hot\u2014cold", "hot / cold"}) {
    EXPECT_TRUE(parts(text)) << text;
  }
  for (const char* text :
       {"hot cold", "hot: cold", "hot/cold", "hot & cold", "hot (cold)", "cyl. 3", "no. 3"}) {
    EXPECT_FALSE(parts(text)) << text;
  }
}

TEST(ClauseMarks, ASignStandsForAWord) {
  struct Row {
    const char *text, *word;
  };
  for (const Row& row :
       {Row{"coil & plugs", "and"}, Row{"coil + plugs", "and"}, Row{"misfire/whistle", "or"},
        Row{"a/c", ""}, Row{"coil plugs", ""}, Row{"coil, plugs", ""}}) {
    const auto words = words_of(row.text);
    const std::string_view text = row.text;
    if (words.size() < 2) continue;
    const auto sign = sign_between(text, words[0], words[1]);
    EXPECT_EQ(sign ? sign->word : "", row.word) << text;
    if (!sign) continue;
    EXPECT_NE(std::string_view("&+/").find(text[sign->at]), std::string_view::npos);
  }
}

TEST(ClauseMarks, WrittenTogetherMeansNoSpaceBetween) {
  const auto together = [](std::string_view text) {
    const auto words = words_of(text);
    return written_together(text, words.front(), words.back());
  };
  EXPECT_TRUE(together("w/o"));
  EXPECT_FALSE(together("w o"));
  EXPECT_FALSE(together("w\no"));
}

TEST(ClauseMarks, TheSignOfAPlaceIsAWord) {
  EXPECT_EQ(lines_of("misfire @ idle"),
            (std::vector<std::string>{"symptom misfire", "condition idle"}));
}

TEST(ClauseMarks, WhatIsSetInPartsNothing) {
  EXPECT_EQ(lines_of("the steering, however, is heavy"),
            std::vector<std::string>{"symptom heavy_steering"});
}

TEST(ClauseMarks, APointThatShortensAWordPartsNothing) {
  EXPECT_EQ(lines_of("batt. fan noisy"), std::vector<std::string>{"symptom battery_fan_noise"});
  EXPECT_FALSE(parts("batt. fan"));
  EXPECT_TRUE(parts("batt. Fan"));
  EXPECT_TRUE(parts("fan. batt"));
}

}  // namespace
}  // namespace shoplore
