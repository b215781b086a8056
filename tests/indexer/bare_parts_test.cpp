#include "indexer/bare_parts.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

const Vocabulary& two_pumps() {
  static const Vocabulary loaded = *Vocabulary::parse(
      {{"own", R"({"kind":"component","entries":[{"id":"fuel_pump","name":"fuel pump"},)"
               R"({"id":"water_pump","name":"water pump","phrases":["coolant pump"]},)"
               R"({"id":"horn","name":"horn"}]})"}});
  return loaded;
}

// What the last word of the text means.
std::string part_at_end_of(std::string_view text, const std::map<std::string, double>& told = {}) {
  static const PhraseMatcher matcher(two_pumps());
  static const CarriedPhrases carried(two_pumps(), matcher);
  static const BareParts parts(two_pumps());
  const NotePage page(matcher, carried, text, {});
  return parts.at(page, page.size() - 1, told).value_or("");
}

TEST(BareParts, TheWordsSaidBeforeTellWhichOne) {
  struct Row {
    const char *text, *id;
  };
  for (const Row& row :
       {Row{"loses water, new pump", "water_pump"}, Row{"coolant low. new pump", "water_pump"},
        Row{"no fuel, pump", "fuel_pump"}, Row{"water in the fuel. fuel pump", "fuel_pump"}}) {
    EXPECT_EQ(part_at_end_of(row.text), row.id) << row.text;
  }
}

TEST(BareParts, WhatTheFindingsTellAboutDecidesWithoutWords) {
  EXPECT_EQ(part_at_end_of("new pump", {{"fuel_pump", 1}}), "fuel_pump");
  EXPECT_EQ(part_at_end_of("new pump", {{"fuel_pump", .5}, {"water_pump", 1}}), "water_pump");
}

TEST(BareParts, WhatNobodyCanTellIsNotFound) {
  for (const char* text : {"new pump", "water and fuel pump", "horn", "loses water, new sensor",
                           "loses water. he came. it rains. he went. he pays. pump"}) {
    EXPECT_EQ(part_at_end_of(text), "") << text;
  }
  EXPECT_EQ(part_at_end_of("new pump", {{"fuel_pump", 1}, {"water_pump", 1}}), "");
}

TEST(BareParts, AFindingTellsOfItsFirstComponentMost) {
  const Entry* entry = built_in_vocabulary().find(EntryKind::kSymptom, "wind_noise");
  ASSERT_NE(entry, nullptr);
  ASSERT_GE(entry->components.size(), 2U);
  const auto told = components_told(
      built_in_vocabulary(),
      {{EntryKind::kSymptom, "wind_noise", 0, 1}, {EntryKind::kSymptom, "unheard_of", 1, 2}});
  EXPECT_EQ(told.size(), entry->components.size());
  EXPECT_EQ(told.at(entry->components[0]), 1);
  EXPECT_EQ(told.at(entry->components[1]), .5);
}

}  // namespace
}  // namespace shoplore
