#include "indexer/telling_words.hpp"

#include <gtest/gtest.h>

#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"
#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

std::vector<std::string> stems_of(std::string_view text) {
  std::vector<std::string> stems;
  for (const Word& word : words_of(text)) {
    if (tells_check(word.text)) stems.push_back(comparable(word.text));
  }
  return stems;
}

TEST(TellingWords, WordsThatStandTogetherInOneChecksTextsTellIt) {
  const TellingWords words(built_in_vocabulary(), EntryKind::kCheck);
  struct Row {
    const char* text;
    const char* id;
  };
  for (const Row& row : {Row{"vanes of turbo swept with tester", "vane_sweep_test"},
                         Row{"timing chain listened with a stethoscope", "chain_listen"},
                         Row{"quantity of leak-off from the injectors", "injector_leak_off"}}) {
    const auto guess = words.guess(stems_of(row.text));
    ASSERT_TRUE(guess) << row.text;
    EXPECT_EQ(guess->id, row.id) << row.text;
    EXPECT_GE(guess->telling.size(), 2U);
  }
}

TEST(TellingWords, OneWordOrCommonWordsTellNothing) {
  const TellingWords words(built_in_vocabulary(), EntryKind::kCheck);
  for (const char* text : {"", "tester", "looked at it", "engine running", "ok", "12.4 V"}) {
    EXPECT_FALSE(words.guess(stems_of(text))) << text;
  }
}

TEST(TellingWords, VerdictsUnitsAndNumbersTellNoCheck) {
  for (const char* word : {"ok", "failed", "not", "left", "bar", "12", "the"}) {
    EXPECT_FALSE(tells_check(word)) << word;
  }
  EXPECT_TRUE(tells_check("vanes"));
}

TEST(TellingWords, APartAndWhatWasDoneToItTellNoSymptom) {
  for (const char* text :
       {"timing chain is original", "gearbox stripped here", "engine mount checked",
        "oil cooler looked at", "wastegate actuator here", "just that, every single stop"}) {
    for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
      EXPECT_NE(item.kind, ItemKind::kSymptom) << text;
    }
  }
}

}  // namespace
}  // namespace shoplore
