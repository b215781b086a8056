#include "indexer/symptom_mentions.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(SymptomMentions, TheWordsAreOfTheNearestThatIsThere) {
  const std::pair<const char*, HowOften> table[] = {
      {"could not make it misfire. It misfires about once a week", HowOften::kSometimes},
      {"misfire, no smoke. The coils are new and he is not happy, happens often", HowOften::kOften},
      {"the engine sometimes misfires", HowOften::kSometimes}};
  for (const auto& [text, expected] : table) {
    for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
      if (item.id != "misfire") continue;
      EXPECT_EQ(item.how_often, expected) << text;
    }
  }
}

TEST(SymptomMentions, FarBehindTheyAreOfNone) {
  for (const RecognisedItem& item :
       built_in_recogniser()
           .recognise("misfire. Coils replaced here last year, plugs too. He comes here often")
           .items) {
    EXPECT_EQ(item.how_often, std::nullopt);
  }
}

}  // namespace
}  // namespace shoplore
