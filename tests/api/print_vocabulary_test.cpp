#include "api/cli/print_vocabulary.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Vocabulary sample() {
  auto loaded = Vocabulary::parse(
      {{"k", R"({"kind":"check","entries":[{"id":"vacuum_test","name":"vacuum on the actuator",
          "phrases":["hand pump"],"minutes":10,"removals":["shield"],"unit":"mbar","low":-700,
          "high":-500,"where":"actuator port","how":"Engine off and cold.","cautions":["hot"],
          "source":"common practice, no source"},
          {"id":"old_test","name":"old test","retired":"too vague"},
          {"id":"other_test","name":"other test","alias_of":"vacuum_test"}]})"},
       {"r", R"({"kind":"removal","entries":[{"id":"shield","name":"heat shield","minutes":8}]})"},
       {"c", R"({"kind":"caution","entries":[{"id":"hot","name":"hot"}]})"}});
  EXPECT_TRUE(loaded) << describe(loaded.error());
  return *loaded;
}

TEST(PrintVocabulary, AnEntryIsShownWhole) {
  const Vocabulary words = sample();
  EXPECT_EQ(print_entry(*words.find(EntryKind::kCheck, "vacuum_test"), EntryOrigin::kOverridden,
                        words, {}),
            "check vacuum_test\n"
            "Name          vacuum on the actuator\n"
            "From          built in, changed by the shop\n"
            "Typed as      \"hand pump\"\n"
            "Minutes       10\n"
            "Remove first  shield (heat shield, 8 min)\n"
            "Where         actuator port\n"
            "Expected      -700 to -500 mbar\n"
            "How           Engine off and cold.\n"
            "Cautions      hot\n"
            "Source        common practice, no source\n");
}

TEST(PrintVocabulary, RetiredAndAliasAreSaid) {
  const Vocabulary words = sample();
  const auto shown = [&](const char* id) {
    return print_entry(*words.find(EntryKind::kCheck, id), EntryOrigin::kOwn, words, {});
  };
  EXPECT_THAT(shown("old_test"), HasSubstr("Retired       too vague"));
  EXPECT_THAT(shown("other_test"),
              HasSubstr("Counts as     vacuum_test (vacuum on the actuator, 10 min)"));
}

TEST(PrintVocabulary, MatchesAreOneALineWithWhatMatched) {
  const Vocabulary words = sample();
  VocabularySearch search{"test"};
  search.retired = RetiredEntries::kIncluded;
  EXPECT_EQ(print_matches(vocabulary_search(words, search), {}),
            "check  old_test     old test [retired: too vague]\n"
            "check  other_test   other test [counts as vacuum_test]\n"
            "check  vacuum_test  vacuum on the actuator\n");
  EXPECT_EQ(print_matches(vocabulary_search(words, {"hand"}), {}),
            "check  vacuum_test  vacuum on the actuator (\"hand pump\")\n");
  search.limit = 1;
  EXPECT_THAT(print_matches(vocabulary_search(words, search), {}), HasSubstr("2 more; --all"));
}

TEST(PrintVocabulary, ColourAddsNoWord) {
  const Vocabulary words = sample();
  const Page plain{}, coloured{kDefaultWidth, Colour::kOn};
  const Entry& entry = *words.find(EntryKind::kCheck, "vacuum_test");
  std::string text = print_entry(entry, EntryOrigin::kOwn, words, coloured);
  EXPECT_THAT(text, HasSubstr("\x1b["));
  for (auto at = text.find('\x1b'); at != text.npos; at = text.find('\x1b')) {
    text.erase(at, text.find('m', at) + 1 - at);
  }
  EXPECT_EQ(text, print_entry(entry, EntryOrigin::kOwn, words, plain));
}

TEST(PrintVocabulary, AnEditSaysWhatFollowsFromIt) {
  EditReport report;
  report.done.entry.id = "flat";
  EXPECT_EQ(print_edit(report, {}), "symptom flat is like that already; nothing changed\n");
  report.done.edited = Edited::kChanged;
  report.done.changes = {"retired: 'too vague'"};
  report.done.entry.retired = "too vague";
  report.file = "symptom.json";
  const std::string text = print_edit(report, {});
  EXPECT_THAT(text, HasSubstr("symptom flat changed\n  retired: 'too vague'\n"));
  EXPECT_THAT(text, HasSubstr("no longer recognised or offered"));
  EXPECT_THAT(text, HasSubstr("Written to symptom.json"));
  EXPECT_THAT(text, HasSubstr("restart it"));
}

}  // namespace
}  // namespace shoplore
