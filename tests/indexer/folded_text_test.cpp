#include "indexer/folded_text.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(FoldedText, CaseAndAccentsMakeNoDifference) {
  const std::pair<const char*, const char*> rows[] = {{"josé", "JOSE"},
                                                      {"JOSÉ", "JOSE"},
                                                      {"jose\u0301", "JOSE"},
                                                      {"Łukáš", "LUKAS"},
                                                      {"ŻÓŁĆ", "ZOLC"},
                                                      {"straße", "STRASE"},
                                                      {"Ñandú", "NANDU"},
                                                      {"œuvre", "OUVRE"},
                                                      {"ελένη", "ΕΛέΝΗ"},
                                                      {"йод", "ЙОД"},
                                                      {"ќ", "Ќ"},
                                                      {"ａｂ１２", "AB12"},
                                                      {"soft\u00ADhyphen", "SOFTHYPHEN"}};
  for (const auto& [text, folded] : rows) EXPECT_EQ(letters_and_digits(text), folded) << text;
}

TEST(FoldedText, SeparatorsAreDropped) {
  EXPECT_EQ(letters_and_digits("ab-12 cd·e"), "AB12CDE");
  EXPECT_EQ(letters_and_digits("ab\u201112\u00A0cde"), "AB12CDE");
  EXPECT_EQ(letters_and_digits(" \t\n"), "");
}

TEST(FoldedText, GlyphsCoverTheirBytes) {
  const std::string text = "aé\u0301–b";
  const FoldedText folded = fold(text);
  ASSERT_EQ(folded.size(), 4U);
  EXPECT_EQ(folded[1].folded, U'E');
  EXPECT_EQ(folded[1].begin, 1U);
  EXPECT_EQ(folded[1].end, 5U);  // with its combining accent
  EXPECT_EQ(folded[2].folded, U'-');
  EXPECT_EQ(folded[3].begin, text.size() - 1);
}

TEST(FoldedText, MalformedBytesAreGlyphsOfTheirOwnAndNoWord) {
  for (const std::string text : {"a\xFFz", "a\xC3z", "a\xE2\x80z", "a\xC0\x80z", "z\xF0\x9F"}) {
    const FoldedText folded = fold(text);
    ASSERT_GE(folded.size(), 2U);
    EXPECT_EQ(folded.back().end, text.size());
    EXPECT_FALSE(is_word(folded[1].folded));
  }
}

TEST(FoldedText, RunsAreMaximal) {
  const std::string text = "P0299, 142k-km é";
  const FoldedText folded = fold(text);
  const auto runs = runs_of(folded);
  ASSERT_EQ(runs.size(), 4U);
  EXPECT_EQ(runs[0].word, "P0299");
  EXPECT_EQ(runs[1].word, "142K");
  EXPECT_EQ(runs[2].word, "KM");
  EXPECT_EQ(runs[3].word, "E");
}

TEST(FoldedText, RunBeforeSkipsWordsAndGivesUpAtADistance) {
  const FoldedText folded = fold("tel no: 5 -- --- 6");
  const auto runs = runs_of(folded);
  const std::string_view skipped[] = {"NO"};
  EXPECT_EQ(run_before(runs, 2, skipped), 0U);
  EXPECT_EQ(run_before(runs, 3, skipped), std::nullopt);
  EXPECT_EQ(run_before(runs, 0, skipped), std::nullopt);
}

}  // namespace
}  // namespace shoplore
