#include "indexer/vocabulary.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "indexer/vocabulary_files.hpp"

namespace shoplore {
namespace {

using ::testing::HasSubstr;

std::string wrapped(const std::string& kind, const std::string& entries) {
  return R"({"kind":")" + kind + R"(","entries":[)" + entries + "]}";
}

TEST(Vocabulary, TheBuiltInFilesAreSound) {
  // As if they were a shop's own: then their phrases are compared with one another too.
  const auto loaded = Vocabulary::parse(built_in_vocabulary_files());
  ASSERT_TRUE(loaded) << describe(loaded.error());
  EXPECT_EQ(loaded->fingerprint(), Vocabulary::built_in()->fingerprint());
  EXPECT_GE(loaded->entries(EntryKind::kSymptom).size(), 180U);
  EXPECT_EQ(loaded->fingerprint().size(), 16U);
}

TEST(Vocabulary, EverySymptomOfHighVoltageStops) {
  const auto loaded = Vocabulary::built_in();
  for (const char* id : {"will_not_charge", "isolation_warning"}) {
    const Entry* entry = loaded->find(EntryKind::kSymptom, id);
    ASSERT_NE(entry, nullptr) << id;
    EXPECT_THAT(entry->cautions, ::testing::Contains(HasSubstr("high_voltage"))) << id;
  }
}

struct Bad {
  const char *name, *text, *says;
};

TEST(Vocabulary, ErrorsNameFileAndEntry) {
  const Bad table[] = {
      {"unknown kind", R"({"kind":"smell","entries":[]})", "kind"},
      {"unknown field", R"({"kind":"symptom","entries":[{"id":"a","name":"a","colour":1}]})",
       "/colour"},
      {"no name", R"({"kind":"symptom","entries":[{"id":"a"}]})", "/name"},
      {"bad id", R"({"kind":"symptom","entries":[{"id":"A b","name":"a"}]})", "id:"},
      {"twice", R"({"kind":"symptom","entries":[{"id":"a","name":"a"},{"id":"a","name":"b"}]})",
       "twice"},
      {"field of another kind",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","minutes":3}]})", "minutes"},
      {"unknown caution",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","cautions":["none"]}]})", "none"},
      {"alias goes round",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","alias_of":"b"},{"id":"b","name":"b","alias_of":"a"}]})",
       "round"},
      {"one phrase, two owners",
       R"({"kind":"symptom","entries":[{"id":"a","name":"flat"},{"id":"b","name":"b","phrases":["flat"]}]})",
       "also one of"},
      {"negative minutes", R"({"kind":"removal","entries":[{"id":"a","name":"a","minutes":-1}]})",
       "negative"},
      {"range upside down",
       R"({"kind":"check","entries":[{"id":"a","name":"a","low":2,"high":1}]})", "above"},
      {"contraries of a check",
       R"({"kind":"check","entries":[{"id":"a","name":"a","contraries":["b"]}]})",
       "contraries: not a field of a check"},
      {"capital contrary",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","contraries":["Fine"]}]})",
       "contraries: 'Fine' is not in lower case"},
      {"contrary without a word",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","contraries":["-"]}]})",
       "contraries: a phrase without a word"},
      {"contrary of one, phrase of another",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","contraries":["fine"]},{"id":"b","name":"fine"}]})",
       "also one of"},
      {"contraries not a list",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","contraries":"b"}]})", "/contraries"},
      {"kind of a check", R"({"kind":"check","entries":[{"id":"a","name":"a","kind_of":"a"}]})",
       "kind_of: not a field of a check"},
      {"kind of an unknown symptom",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","kind_of":"b"}]})",
       "'b' is not a known symptom"},
      {"kind of itself", R"({"kind":"symptom","entries":[{"id":"a","name":"a","kind_of":"a"}]})",
       "kind_of: is the entry itself"},
      {"range_of of a symptom",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","range_of":"difference"}]})",
       "range: not a field of a symptom"},
      {"unknown range_of", R"({"kind":"check","entries":[{"id":"a","name":"a","range_of":"sum"}]})",
       "/range_of"},
      {"capital phrase",
       R"({"kind":"symptom","entries":[{"id":"a","name":"a","phrases":["Flat"]}]})", "lower case"},
      {"not JSON", "{", "malformed"}};
  for (const Bad& bad : table) {
    const auto loaded = Vocabulary::parse({{"own.json", bad.text}});
    ASSERT_FALSE(loaded) << bad.name;
    EXPECT_THAT(describe(loaded.error()), HasSubstr("own.json")) << bad.name;
    EXPECT_THAT(describe(loaded.error()), HasSubstr(bad.says)) << bad.name;
  }
}

TEST(Vocabulary, ALaterFileOverridesAnEntryWhole) {
  const auto loaded = Vocabulary::parse(
      {{"built-in", wrapped("symptom", R"({"id":"a","name":"first","phrases":["x"]})")},
       {"own", wrapped("symptom", R"({"id":"a","name":"second"})")}});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->find(EntryKind::kSymptom, "a")->name, "second");
  EXPECT_TRUE(loaded->find(EntryKind::kSymptom, "a")->phrases.empty());
}

TEST(Vocabulary, AnAliasLeadsToTheEntryThatStandsForIt) {
  const auto loaded = Vocabulary::parse(
      {{"own", wrapped("symptom", R"({"id":"a","name":"a"},{"id":"b","name":"b","alias_of":"a"},)"
                                  R"({"id":"c","name":"c","alias_of":"b"})")}});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->canonical(EntryKind::kSymptom, "c"), "a");
  EXPECT_EQ(loaded->canonical(EntryKind::kSymptom, "unheard_of"), "unheard_of");
  EXPECT_EQ(loaded->display_name(EntryKind::kSymptom, "unheard_of"), "unheard of");
}

TEST(Vocabulary, TheFingerprintTellsContentApart) {
  const auto one = Vocabulary::parse({{"f", wrapped("symptom", R"({"id":"a","name":"a"})")}});
  const auto same = Vocabulary::parse({{"g", wrapped("symptom", R"({"id":"a","name":"a"})")}});
  const auto other = Vocabulary::parse({{"f", wrapped("symptom", R"({"id":"a","name":"b"})")}});
  EXPECT_EQ(one->fingerprint(), same->fingerprint());
  EXPECT_NE(one->fingerprint(), other->fingerprint());
}

TEST(Vocabulary, TheFingerprintIsFnv1aOverTheTextsAsLoaded) {
  // FNV-1a, 64 bits, of no bytes is its offset basis (RFC 9923).
  EXPECT_EQ(Vocabulary::parse({})->fingerprint(), "cbf29ce484222325");
}

TEST(Vocabulary, RetiredEntriesStayKnownAndFreeTheirPhrases) {
  const auto loaded = Vocabulary::parse(
      {{"own", wrapped("symptom", R"({"id":"a","name":"flat","retired":"too vague"},)"
                                  R"({"id":"b","name":"gutless","phrases":["flat"]})")}});
  ASSERT_TRUE(loaded) << describe(loaded.error());
  EXPECT_NE(loaded->find(EntryKind::kSymptom, "a"), nullptr);
}

TEST(Vocabulary, AnOverridesFolderIsReadAndNamedInErrors) {
  std::string pattern = ::testing::TempDir() + "shoplore-vocabulary-XXXXXX";
  const std::filesystem::path folder = mkdtemp(pattern.data());
  std::filesystem::remove_all(folder);
  EXPECT_EQ(Vocabulary::load(folder)->fingerprint(), Vocabulary::built_in()->fingerprint());
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "own.json") << wrapped("symptom", R"({"id":"misfire","name":"mine"})");
  const auto own = Vocabulary::load(folder);
  ASSERT_TRUE(own) << describe(own.error());
  EXPECT_EQ(own->display_name(EntryKind::kSymptom, "misfire"), "mine");
  EXPECT_NE(own->fingerprint(), Vocabulary::built_in()->fingerprint());
  std::ofstream(folder / "own.json") << wrapped("symptom", R"({"id":"misfire"})");
  const auto bad = Vocabulary::load(folder);
  ASSERT_FALSE(bad);
  EXPECT_THAT(describe(bad.error()), HasSubstr("own.json, entry 'misfire'"));
  std::filesystem::remove_all(folder);
}

// Common practice, no source: what nobody may forget after renewing such a part.
TEST(Vocabulary, SaysWhatAComponentNeedsAfterwards) {
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  const std::pair<const char*, const char*> table[] = {{"battery", "register"},
                                                       {"steering_angle_sensor", "calibrate"},
                                                       {"steering_rack", "alignment"},
                                                       {"track_rod_end", "alignment"},
                                                       {"brake_fluid", "bleed"},
                                                       {"brake_hose", "bleed"},
                                                       {"brake_pipe", "bleed"},
                                                       {"brake_caliper", "bleed"},
                                                       {"brake_master_cylinder", "bleed"},
                                                       {"wheel_cylinder", "bleed"},
                                                       {"clutch_slave_cylinder", "bleed"},
                                                       {"injector", "code in"},
                                                       {"throttle_body", "relearn"},
                                                       {"coolant", "bleed"},
                                                       {"thermostat", "bleed"},
                                                       {"timing_belt", "timing marks"}};
  for (const auto& [id, word] : table) {
    const Entry* entry = vocabulary.find(EntryKind::kComponent, id);
    ASSERT_NE(entry, nullptr) << id;
    EXPECT_THAT(entry->afterwards, ::testing::Contains(HasSubstr(word))) << id;
  }
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kComponent)) {
    EXPECT_TRUE(entry.afterwards.empty() || !entry.source.empty()) << id;
  }
}

}  // namespace
}  // namespace shoplore
