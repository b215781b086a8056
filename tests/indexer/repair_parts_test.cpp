#include "indexer/repair_parts.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

RepairParts parts_on(const NotePage& page) {
  static const BareParts bare(built_in_vocabulary());
  return repair_parts_of(page, built_in_vocabulary(), bare);
}

std::vector<std::string> parts_in(const char* text) {
  const NotePage page = page_of(text);
  std::vector<std::string> ids;
  for (const PhraseMatch& part : parts_on(page).parts) ids.push_back(part.id);
  return ids;
}

TEST(RepairParts, NamesBareNounsAndThoseOfAConditionAreParts) {
  const std::vector<NoteRow> table{
      {"new turbo, coil and plugs", {"turbocharger", "ignition_coil", "spark_plug"}},
      {"abs lamp on, new sensor", {"wheel_speed_sensor"}},
      {"since new tyres", {"tyre"}}};
  for (const NoteRow& row : table) EXPECT_EQ(parts_in(row.text), row.items) << row.text;
}

TEST(RepairParts, PartsOfALongerFindingAndSeasonsAreNone) {
  for (const char* text : {"battery light on", "changed in spring", "new sensor", "misfire"}) {
    EXPECT_EQ(parts_in(text), std::vector<std::string>{}) << text;
  }
}

TEST(RepairParts, OnlyTheWordsOfAConditionAreLeftToIt) {
  const NotePage page = page_of("vibration since new tyres, coil");
  const RepairParts found = parts_on(page);
  EXPECT_EQ(found.is_condition.at(token_of(page, "tyres")), 1);
  EXPECT_EQ(found.is_condition.at(token_of(page, "coil")), 0);
}

TEST(RepairParts, TheBatteryOfAHybridThatWasChangedIsTheSmallOne) {
  NotePage page = page_of("battery replaced");
  EXPECT_EQ(parts_on(page).parts.at(0).id, "battery");
  page.keep(recognised_item(ItemKind::kFuel, "hybrid", {0, 0}));
  EXPECT_EQ(parts_on(page).parts.at(0).id, "twelve_volt_auxiliary_battery");
}

TEST(RepairParts, TheNameOfAFirmIsNoPart) {
  for (const char* text : {"the tyre place", "exhaust specialist", "main dealer"}) {
    const NotePage page = page_of(text);
    EXPECT_TRUE(parts_on(page).parts.empty()) << text;
  }
}

}  // namespace
}  // namespace shoplore
