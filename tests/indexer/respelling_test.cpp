#include "indexer/respelling.hpp"

#include <gtest/gtest.h>

#include "indexer/phrase_form.hpp"

namespace shoplore {
namespace {

Respelling of_words(const std::vector<std::string>& words) {
  Respelling respelling;
  for (const std::string& word : words) {
    respelling.add_word(word);
    respelling.add_stem(comparable(word));
  }
  return respelling;
}

struct Row {
  const char *word, *respelt;
};

TEST(Respelling, OneInsertionDeletionReplacementOrSwapIsPutRight) {
  const Respelling respelling = of_words({"misfire", "alternator", "whistle", "while"});
  for (const Row& row :
       {Row{"misfrie", "misfire"}, Row{"misfirre", "misfire"}, Row{"misfre", "misfire"},
        Row{"mixfire", "misfire"}, Row{"alternater", "alternator"}, Row{"whisle", "whistle"}}) {
    EXPECT_EQ(respelling.respelt(row.word), row.respelt) << row.word;
  }
}

TEST(Respelling, KnownShortEnglishAndDoubtfulWordsStay) {
  const Respelling respelling = of_words({"misfire", "turbo", "valve", "glow", "tanks", "banks"});
  for (const char* word : {"misfire", "misfiring", "glwo", "misfree1", "m1sfire", "misffirre",
                           "kanks", "value", "isfire"}) {
    EXPECT_EQ(respelling.respelt(word), word) << word;
  }
}

}  // namespace
}  // namespace shoplore
