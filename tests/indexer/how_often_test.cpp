#include "indexer/how_often.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

std::optional<HowOften> how_often_of(const std::string& text) {
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    if (item.kind == ItemKind::kSymptom) return item.how_often;
  }
  return std::nullopt;
}

TEST(HowOften, IsReadBesideTheSymptomOrInTheClauseAfter) {
  using enum HowOften;
  const std::vector<std::pair<const char*, HowOften>> table{
      {"misfires now and then", kSometimes}, {"intermittent misfire", kSometimes},
      {"not always misfiring", kSometimes},  {"misfire, not always", kSometimes},
      {"misfires on and off", kSometimes},   {"misfired twice this week", kSometimes},
      {"misfired a few times", kSometimes},  {"misfires nearly every time", kOften},
      {"misfires most of the time", kOften}, {"often misfires", kOften},
      {"misfires every time", kAlways},      {"constant misfire", kAlways},
      {"misfired only once", kOnce}};
  for (const auto& [text, expected] : table) EXPECT_EQ(how_often_of(text), expected) << text;
}

TEST(HowOften, IsNotGuessed) {
  for (const char* text : {"misfire", "misfire once warm", "misfire, coils replaced twice"}) {
    EXPECT_EQ(how_often_of(text), std::nullopt) << text;
  }
}

TEST(HowOften, OneTimeInSeveralIsSometimes) {
  const auto items = built_in_recogniser().recognise("misfires maybe 1 time in 5").items;
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(items[0].how_often, HowOften::kSometimes);
}

TEST(HowOften, MayStandInsideASymptomOrBehindOthersThatAreDenied) {
  const std::pair<const char*, HowOften> table[] = {
      {"the key is sometimes not recognised", HowOften::kSometimes},
      {"brakes squeal but aren't grinding, happens often", HowOften::kOften},
      {"pump clicks off every fill-up", HowOften::kAlways},
      {"engine light came on once last week", HowOften::kOnce},
      {"engine light came on once but went off", HowOften::kOnce}};
  for (const auto& [text, expected] : table) EXPECT_EQ(how_often_of(text), expected) << text;
}

}  // namespace
}  // namespace shoplore
