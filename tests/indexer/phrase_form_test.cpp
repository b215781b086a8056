#include "indexer/phrase_form.hpp"

#include <gtest/gtest.h>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

std::vector<std::string> form_of(std::string_view phrase) {
  std::vector<std::string> words;
  for (const Word& word : words_of(phrase)) words.push_back(word.text);
  return phrase_form(words);
}

TEST(PhraseForm, WaysOfSayingTheSameAreOnePhrase) {
  const std::vector<std::vector<const char*>> table{
      {"not starting", "doesn't start", "does not start", "didn't start", "isn't starting"},
      {"won't crank", "wont crank", "will not crank", "wouldn't crank"},
      {"abs light on", "the ABS lamp is on", "abs lights on"},
      {"pulls to the left", "pulling left", "pulled left"},
      {"flat tire", "flat tyres"}};
  for (const auto& same : table) {
    for (const char* phrase : same) EXPECT_EQ(form_of(phrase), form_of(same[0])) << phrase;
  }
}

TEST(PhraseForm, WhatIsMeantDifferentlyStaysApart) {
  const std::vector<std::pair<const char*, const char*>> table{
      {"won't charge", "not charging"},
      {"new battery", "after new battery"},
      {"lights on dash", "all lights on dash"},
      {"stop and go", "stop go"},
      {"no start", "start"}};
  for (const auto& [a, b] : table) EXPECT_NE(form_of(a), form_of(b)) << a;
}

TEST(PhraseForm, AShortPhraseKeepsItsSmallWords) {
  EXPECT_EQ(form_of("in rain"), (std::vector<std::string>{"in", "rain"}));
  EXPECT_EQ(form_of("up to the hill"), form_of("up to the hill"));
  EXPECT_EQ(form_of("on full lock"), (std::vector<std::string>{"on", "full", "lock"}));
  EXPECT_TRUE(form_of("").empty());
}

TEST(PhraseForm, ContractionsAreWrittenOut) {
  EXPECT_EQ(written_out("doesn't"), (std::vector<std::string>{"does", "not"}));
  EXPECT_EQ(written_out("cannot"), (std::vector<std::string>{"can", "not"}));
  EXPECT_EQ(written_out("coolant"), (std::vector<std::string>{"coolant"}));
  EXPECT_EQ(written_out("we'd"), (std::vector<std::string>{"we", "had"}));
  EXPECT_EQ(written_out("it's"), (std::vector<std::string>{"it", "is"}));
  EXPECT_EQ(written_out("owner's"), (std::vector<std::string>{"owner's"}));
}

TEST(PhraseForm, TheNetworkAtTheEndIsNoAuxiliaryVerb) {
  EXPECT_NE(phrase_form({"voltage", "on", "can"}), phrase_form({"voltage", "on"}));
  EXPECT_EQ(phrase_form({"can", "slip", "badly"}), phrase_form({"slip", "badly"}));
}

}  // namespace
}  // namespace shoplore
