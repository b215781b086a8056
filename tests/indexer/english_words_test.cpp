#include "indexer/english_words.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace shoplore {
namespace {

TEST(EnglishWords, KnowsPlainWordsAndNoMisspelling) {
  for (const char* word : {"banks", "split", "seller", "breaks", "a", "zoom", "reckon"}) {
    EXPECT_TRUE(is_english_word(word)) << word;
  }
  for (const char* word : {"", "exaust", "alternater", "whisle", "tubro", "zzz", "bank s", "A"}) {
    EXPECT_FALSE(is_english_word(word)) << word;
  }
}

TEST(EnglishWords, FindsEveryWordOfItsList) {
  std::istringstream list(english_word_files().front().second);
  std::size_t words = 0;
  std::string before;
  for (std::string word; std::getline(list, word); ++words) {
    ASSERT_LT(before, word);
    ASSERT_TRUE(is_english_word(word)) << word;
    before = word;
  }
  EXPECT_GT(words, 20'000U);
}

}  // namespace
}  // namespace shoplore
