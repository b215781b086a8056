#include "indexer/text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace shoplore {
namespace {

using ::testing::ElementsAreArray;

std::vector<std::string> texts_of(std::string_view text) {
  std::vector<std::string> texts;
  for (const Word& word : words_of(text)) texts.push_back(word.text);
  return texts;
}

struct Split {
  const char* text;
  std::vector<std::string> words;
};

TEST(Text, SplitsAtWhateverIsNeitherLetterNorDigit) {
  const std::vector<Split> table{{"", {}},
                                 {" \t\n.,;", {}},
                                 {"Flat uphill, no whistle", {"flat", "uphill", "no", "whistle"}},
                                 {"P0299/16", {"p0299", "16"}},
                                 {"w/o", {"w", "o"}},
                                 {"12.6V", {"12", "6v"}},
                                 {"flat–uphill…", {"flat", "uphill"}},  // en dash, ellipsis
                                 {"142\u00a0km", {"142", "km"}},        // no-break space
                                 {"“dead”", {"dead"}},                  // printer's quotes
                                 {"82 °C", {"82", "c"}},                // degree sign
                                 {"Über Öl", {"über", "öl"}}};
  for (const Split& row : table) {
    EXPECT_THAT(texts_of(row.text), ElementsAreArray(row.words)) << row.text;
  }
}

TEST(Text, AnApostropheBelongsToItsWordHoweverItIsTyped) {
  const std::vector<Split> table{{"won't start", {"won't", "start"}},
                                 {"won’t start", {"won't", "start"}},
                                 {"R&R'd", {"r", "r'd"}},
                                 {"'16", {"16"}},
                                 {"owner's", {"owner's"}},
                                 {"pads' wear", {"pads", "wear"}},
                                 {"a''b", {"a", "b"}},
                                 {"'", {}}};
  for (const Split& row : table) {
    EXPECT_THAT(texts_of(row.text), ElementsAreArray(row.words)) << row.text;
  }
}

TEST(Text, SpansAreTheBytesOfTheWord) {
  const std::string text = "Öl, won’t…";
  const auto words = words_of(text);
  ASSERT_EQ(words.size(), 2U);
  EXPECT_EQ(text.substr(words[0].begin, words[0].end - words[0].begin), "Öl");
  EXPECT_EQ(text.substr(words[1].begin, words[1].end - words[1].begin), "won’t");
}

TEST(Text, LowerCaseKnowsLatin1AndKeepsEveryLength) {
  EXPECT_EQ(lower_case("ABC xyz 123"), "abc xyz 123");
  EXPECT_EQ(lower_case("ÀÖØÞ"), "àöøþ");  // U+00C0, D6, D8, DE
  EXPECT_EQ(lower_case("×÷ß"), "×÷ß");    // signs, and a letter without capital
  EXPECT_EQ(lower_case("Ω"), "Ω");        // beyond Latin-1
}

TEST(Text, NegationsAreNeverStopWords) {
  for (const char* word : {"no", "not", "off", "on", "without", "never", "none", "won't", "hot"}) {
    EXPECT_FALSE(is_stop_word(word)) << word;
  }
  for (const char* word : {"the", "with", "and", "van"}) EXPECT_TRUE(is_stop_word(word)) << word;
}

// Stems from the sample vocabulary of the Porter 2 stemmer, snowballstem.org/algorithms/english.
TEST(Text, StemsAsPorter2Does) {
  EXPECT_EQ(stem("consisting"), "consist");
  EXPECT_EQ(stem("consistency"), "consist");
  EXPECT_EQ(stem("knocked"), "knock");
  EXPECT_EQ(stem("knowing"), "know");
}

TEST(Text, IndexWordsAreStemsWithoutStopWordsAndMonsters) {
  EXPECT_THAT(index_words("The whistles are not whistling " + std::string(65, 'x')),
              ElementsAreArray({"whistl", "not", "whistl"}));
}

TEST(Text, TellsUtf8FromOtherBytes) {
  for (const char* good : {"", "abc", "é", "€", "𝄞", "\xef\xbf\xbf", "\xf4\x8f\xbf\xbf"}) {
    EXPECT_TRUE(is_utf8(good)) << good;
  }
  // RFC 3629: overlong forms, surrogates, beyond U+10FFFF, stray and cut sequences.
  for (const char* bad : {"\xc0\xaf", "\xe0\x80\xaf", "\xf0\x80\x80\xaf", "\xed\xa0\x80",
                          "\xf4\x90\x80\x80", "\xff", "\x80", "\xc3", "\xe2\x82", "a\xc3z"}) {
    EXPECT_FALSE(is_utf8(bad)) << bad;
  }
}

TEST(Text, WordsOfAnyBytesLieInOrderInsideTheText) {
  std::mt19937_64 random(20'261'125);  // fixed seed
  for (int i = 0; i < 5'000; ++i) {
    std::string text;
    for (std::uint64_t n = random() % 40; n > 0; --n) text += static_cast<char>(random() % 256);
    std::size_t at = 0;
    for (const Word& word : words_of(text)) {
      ASSERT_LE(at, word.begin) << i;
      ASSERT_LT(word.begin, word.end) << i;
      ASSERT_LE(word.end, text.size()) << i;
      at = word.end;
    }
    ASSERT_EQ(lower_case(text).size(), text.size());
  }
}

}  // namespace
}  // namespace shoplore
