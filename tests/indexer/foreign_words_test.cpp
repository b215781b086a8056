#include "indexer/foreign_words.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

class ForeignWords : public ::testing::Test {
 protected:
  std::vector<EvidenceItem> of(const std::string& text) const {
    return foreign_words(text, recogniser_.recognise(text), recogniser_);
  }
  const Vocabulary vocabulary_ = Vocabulary::built_in().value();
  const Recogniser recogniser_{vocabulary_};
};

TEST_F(ForeignWords, AreOnesNothingWasReadFrom) {
  EXPECT_EQ(of("misfire, it fobbles"), (std::vector<EvidenceItem>{{"word:fobbl", "present"}}));
  EXPECT_TRUE(of("misfire").empty());
  EXPECT_TRUE(of("").empty());
}

// The vocabulary's own, though left over here: a denial, an adjective, a part of another phrase.
TEST_F(ForeignWords, AreInNoPhrase) {
  for (const char* text : {"no whine", "blue", "misfire, coil pack", "whining"}) {
    EXPECT_TRUE(of(text).empty()) << text;
  }
}

}  // namespace
}  // namespace shoplore
