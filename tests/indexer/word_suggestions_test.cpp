#include "indexer/word_suggestions.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <random>

namespace shoplore {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

Vocabulary sample() {
  auto loaded = Vocabulary::parse({{"s", R"({"kind":"symptom","entries":[
          {"id":"wobble_at_speed","name":"wobble at speed","phrases":["steering wheel shakes"]},
          {"id":"wheel_noise","name":"wheel noise"},
          {"id":"charge_lamp","name":"charge lamp on","phrases":["alternator light"]},
          {"id":"judder","name":"judder","retired":"too vague"},
          {"id":"shimmy","name":"shimmies","alias_of":"wobble_at_speed"}]})"},
                                   {"c", R"({"kind":"component","entries":[
          {"id":"alternator","name":"alternator"},
          {"id":"battery_cable","name":"battery cable"},
          {"id":"linkage","name":"wastegate linkage"}]})"},
                                   {"v", R"({"kind":"vehicle_model","entries":[
          {"id":"brackwater_tidal","name":"Tidal","phrases":["brackwater tidal"],
           "make":"Brackwater"}]})"}});
  EXPECT_TRUE(loaded) << describe(loaded.error());
  return *loaded;
}

std::vector<std::string> suggested(const std::vector<std::string>& words) {
  std::vector<std::string> names;
  for (const WordSuggestions& each : WordSuggester(sample()).suggest(words)) {
    for (const Suggestion& suggestion : each.suggestions) names.push_back(suggestion.name);
  }
  return names;
}

TEST(WordSuggestions, AWordWithinAPhraseIsOffered) {
  EXPECT_THAT(suggested({"wobbling"}), ElementsAre("wobble at speed"));
  EXPECT_THAT(suggested({"linkages"}), ElementsAre("wastegate linkage"));
}

TEST(WordSuggestions, ABeginningIsOffered) {
  EXPECT_THAT(suggested({"wob"}), ElementsAre("wobble at speed"));
  EXPECT_THAT(suggested({"alt"}), ElementsAre("alternator", "charge lamp on"));
  EXPECT_THAT(suggested({"al"}), IsEmpty());
}

TEST(WordSuggestions, EditsAreOneForShortWordsAndTwoForLongOnes) {
  EXPECT_THAT(suggested({"Wheell"}), ElementsAre("wheel noise", "wobble at speed"));
  EXPECT_THAT(suggested({"altenatr"}), ElementsAre("alternator", "charge lamp on"));
  EXPECT_THAT(suggested({"wabl"}), IsEmpty());       // two edits of four letters
  EXPECT_THAT(suggested({"eltinator"}), IsEmpty());  // two edits and another first letter
}

TEST(WordSuggestions, PhrasesThatHoldMoreOfTheOtherWordsComeFirst) {
  EXPECT_THAT(suggested({"wheel"}), ElementsAre("wheel noise", "wobble at speed"));
  const auto both = WordSuggester(sample()).suggest({"wheel", "shaking"});
  ASSERT_EQ(both.size(), 2U);
  EXPECT_EQ(both[0].word, "wheel");
  EXPECT_EQ(both[0].suggestions[0].id, "wobble_at_speed");
}

TEST(WordSuggestions, AnAliasOffersWhatStandsForIt) {
  const auto found = WordSuggester(sample()).suggest({"shimmi"});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(found[0].suggestions,
              ElementsAre(Suggestion{EntryKind::kSymptom, "wobble_at_speed", "wobble at speed"}));
}

TEST(WordSuggestions, AModelIsOfferedWithItsMake) {
  EXPECT_THAT(suggested({"brackwatr"}), ElementsAre("Brackwater Tidal"));
}

TEST(WordSuggestions, NothingIsOfferedFor) {
  const char* near_misses[] = {"judder",  // retired
                               "wobble2", "142", "with", "and",        "no",  "not",
                               "light",   // ordinary
                               "called",  // everyday, though two edits from "cable"
                               "at",      "",    "...",  "frobnicate", "12.6"};
  for (const char* word : near_misses) EXPECT_THAT(suggested({word}), IsEmpty()) << word;
}

TEST(WordSuggestions, EachWordIsAnsweredOnceInTheGivenOrder) {
  const auto found = WordSuggester(sample()).suggest({"wob", "foo", "alt", "wob"});
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].word, "wob");
  EXPECT_EQ(found[1].word, "alt");
}

TEST(WordSuggestions, AreNeverMoreThanThree) {
  const auto built_in = Vocabulary::built_in();
  ASSERT_TRUE(built_in);
  const WordSuggester suggester(*built_in);
  const std::vector<std::string> words = {"sens", "pres", "batery", "brakse", "injectr", "cool"};
  for (const WordSuggestions& each : suggester.suggest(words)) {
    EXPECT_GE(each.suggestions.size(), 1U) << each.word;
    EXPECT_LE(each.suggestions.size(), kMaxSuggestions) << each.word;
  }
}

// About as many entries and phrases as the trade's vocabulary is meant to have, of random words.
Vocabulary large_vocabulary(const std::vector<std::string>& pool, std::mt19937& random) {
  const auto word = [&] { return pool[random() % pool.size()]; };
  std::string entries;
  for (int i = 0; i < 900; ++i) {
    const std::string id = "e" + std::to_string(i);
    entries += (i == 0 ? "" : ",") + ("{\"id\":\"" + id) + "\",\"name\":\"" + word() + " " + id +
               "\",\"phrases\":[";
    for (int k = 0; k < 5; ++k) {
      entries +=
          (k == 0 ? "\"" : ",\"") + word() + " " + word() + " " + id + std::to_string(k) + "\"";
    }
    entries += "]}";
  }
  auto large =
      Vocabulary::parse({{"large", "{\"kind\":\"symptom\",\"entries\":[" + entries + "]}"}});
  EXPECT_TRUE(large) << describe(large.error());
  return *large;
}

TEST(WordSuggestions, TwentyWordsAmongFiveThousandPhrasesAreQuick) {
  constexpr unsigned kSeed = 20'260'302;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  std::vector<std::string> pool;
  for (int i = 0; i < 3'000; ++i) {
    // Letters about as often as in English, from memory.
    constexpr std::string_view kLetters =
        "eeeeeeeeeeeetttttttttaaaaaaaaooooooooiiiiiiinnnnnnnssssss"
        "hhhhhhrrrrrrddddllllcccuuummmwwffggyyppbbvk";
    std::string word;
    for (auto n = 4 + random() % 7; n > 0; --n) word += kLetters[random() % kLetters.size()];
    pool.push_back(word);
  }
  const Vocabulary large = large_vocabulary(pool, random);
  const WordSuggester suggester(large);
  std::vector<std::string> words;
  for (int i = 0; i < 20; ++i) {
    std::string word = pool[random() % pool.size()];
    word[word.size() / 2] = 'x';
    words.push_back(word);
  }
  double best = 1e9;
  for (int tries = 0; tries < 20; ++tries) {
    const auto start = std::chrono::steady_clock::now();
    const auto found = suggester.suggest(words);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    best = std::min(best, took.count());
    EXPECT_FALSE(found.empty());
  }
  std::cout << "20 words: " << best << " ms\n";
  // Half a millisecond in a plain build; the room is for sanitizers and a busy machine.
  EXPECT_LT(best, 10.0);
}

}  // namespace
}  // namespace shoplore
