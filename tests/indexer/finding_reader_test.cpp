#include "indexer/finding_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(FindingReader, ANegationTurnsASymptomRoundWithinItsClause) {
  const std::vector<NoteRow> table{
      {"no misfire", {"symptom misfire absent"}},
      {"not misfiring", {"symptom misfire absent"}},
      {"without misfire", {"symptom misfire absent"}},
      {"w/o misfire", {"symptom misfire absent"}},
      {"never stalls", {"symptom stalls absent"}},
      {"doesn't whistle", {"symptom whistle_under_load absent"}},
      {"doesn’t whistle", {"symptom whistle_under_load absent"}},
      {"misfire: none", {"symptom misfire absent"}},
      {"whistle not heard", {"symptom whistle_under_load absent"}},
      {"misfire was not found", {"symptom misfire absent"}},
      {"no audible whistle", {"symptom whistle_under_load absent"}},
      {"no sign of a misfire", {"symptom misfire absent"}},
      {"no misfire or whistle", {"symptom misfire absent", "symptom whistle_under_load absent"}},
      {"no misfire/whistle", {"symptom misfire absent", "symptom whistle_under_load absent"}},
      {"no black smoke, misfire or whistle",
       {"symptom black_smoke absent", "symptom misfire absent",
        "symptom whistle_under_load absent"}},
      {"misfire is no longer there", {"symptom misfire absent"}},
      {"engine light hasn't come back", {"symptom engine_lamp_on absent"}},
      {"did not cure the misfire", {"symptom misfire"}},
      {"didn't stall - just no power", {"symptom stalls absent", "symptom lack_of_power"}},
      {"no black smoke, misfire, whistle",
       {"symptom black_smoke absent", "symptom misfire", "symptom whistle_under_load"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ANegationReachesNoFurtherThanItMay) {
  const std::vector<NoteRow> table{
      {"no misfire, whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"no misfire. whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"no misfire but whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"loses water no visible leak", {"symptom coolant_loss"}},
      {"no misfire and whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"not running right misfire", {"symptom misfire"}},
      {"misfire, not found yet", {"symptom misfire"}},
      {"misfiring not always", {"symptom misfire"}},
      {"not always misfiring", {"symptom misfire"}},
      {"does not stall every time", {"symptom stalls"}},
      {"can't reproduce misfire", {"symptom misfire"}},
      {"no 3 cylinder misfire", {"symptom misfire"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, APhraseThatHoldsANegationIsAFinding) {
  const std::vector<NoteRow> table{
      {"no power", {"symptom lack_of_power"}},
      {"no start", {"symptom no_start"}},
      {"won’t start", {"symptom no_start"}},
      {"will not charge", {"symptom will_not_charge"}},
      {"no power misfire", {"symptom lack_of_power", "symptom misfire"}},
      {"no start or whistle", {"symptom no_start", "symptom whistle_under_load"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ConditionsStandOnTheirOwnAndADeniedOneIsLeft) {
  const std::vector<NoteRow> table{
      {"flat uphill", {"symptom lack_of_power", "condition uphill"}},
      {"no misfire uphill", {"symptom misfire absent", "condition uphill"}},
      {"misfire, not when cold", {"symptom misfire"}},
      {"not uphill", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
  EXPECT_EQ(leftover_of("not uphill"), (std::vector<std::string>{"not", "uphill"}));
}

TEST(FindingReader, TheLongestPhraseWins) {
  const std::vector<NoteRow> table{{"flat spot", {"symptom hesitation"}},
                                   {"battery flat", {"symptom battery_flat_overnight"}},
                                   {"battery light on", {"symptom charge_lamp_on"}},
                                   {"petrol smell", {"symptom fuel_smell"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, SmallMisspellingsAreForgivenAndOrdinaryWordsLeftAlone) {
  const std::vector<NoteRow> table{{"misfrie", {"symptom misfire"}},
                                   {"whisle", {"symptom whistle_under_load"}},
                                   {"on there", {}},     // not "on three"
                                   {"three times", {}},  // not tyres
                                   {"while driving", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ACylinderNumberBelongsToItsSymptom) {
  for (const std::string text :
       {"misfire cylinder 3", "misfire cyl 3", "misfire on cyl. 3", "cylinder 3 misfire",
        "no. 3 cylinder misfire", "misfire no 3 cylinder", "cylinder no 3 misfire"}) {
    const auto items = built_in_recogniser().recognise(text).items;
    ASSERT_EQ(items.size(), 1U) << text;
    EXPECT_EQ(line_of(items[0]), "symptom misfire") << text;
    EXPECT_EQ(words_at(text, items[0].span), text);
  }
  EXPECT_EQ(leftover_of("misfire cylinder head"), (std::vector<std::string>{"cylinder", "head"}));
}

// Bare words that could be said of many things name none of them.
TEST(FindingReader, WordsOfManyThingsNameNoFinding) {
  const std::vector<NoteRow> table{{"lamp won't switch off", {}},
                                   {"sidelight won't switch on", {}},
                                   {"won't engage", {}},
                                   {"mirror motor", {}},
                                   {"misfire every morning", {"symptom misfire"}},
                                   {"misfire every night", {"symptom misfire"}},
                                   {"misfire on a hill", {"symptom misfire", "condition uphill"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ACheckNeedsAWordThatSaysHowItWent) {
  const std::vector<NoteRow> table{
      {"linkage stiff by hand", {"check wastegate_linkage_by_hand fail"}},
      {"linkage by hand stiff", {"check wastegate_linkage_by_hand fail"}},
      {"linkage by hand not stiff", {"check wastegate_linkage_by_hand pass"}},
      {"moved the linkage, fine", {"check wastegate_linkage_by_hand pass"}},
      {"moved the linkage fine", {"check wastegate_linkage_by_hand pass"}},
      {"plug wells dry", {"check plug_well_look pass"}},
      {"compression was not good", {"check compression_test fail"}},
      {"bad compression", {"check compression_test fail"}},
      {"compression good boost log low", {"check compression_test pass", "check boost_log fail"}},
      {"compression low power", {"symptom lack_of_power"}},
      {"compression test", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
  EXPECT_EQ(leftover_of("compression test"), (std::vector<std::string>{"compression", "test"}));
}

TEST(FindingReader, WhatIsThereAtTimesIsThere) {
  const std::vector<NoteRow> table{
      {"misfires when towing. Never misfires otherwise", {"symptom misfire", "condition towing"}},
      {"Is there misfire? It does not misfire", {"symptom misfire absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ALongerNameIsNoSymptom) {
  for (const char* text :
       {"knock sensor is original", "steering rack ok", "fan control module ok"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text;
  }
  EXPECT_EQ(lines_of("play in the wheel bearing: ok"),
            std::vector<std::string>{"check bearing_play pass"});
}

TEST(FindingReader, AConditionWhereAllIsWellIsNone) {
  EXPECT_EQ(lines_of("misfire, fine on the motorway"), std::vector<std::string>{"symptom misfire"});
  EXPECT_EQ(lines_of("misfire on the motorway"),
            (std::vector<std::string>{"symptom misfire", "condition motorway"}));
}

TEST(FindingReader, WordsThatOnlyHappenToStandTogetherAreNone) {
  const std::vector<NoteRow> table{{"took two of us on the bar", {}},
                                   {"look for play in the wheel bearing", {}},
                                   {"back box held up with wire", {}},
                                   {"steering is really heavy", {"symptom heavy_steering"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ACommaBeforeItsOwnDenialPartsNoSymptom) {
  const std::vector<NoteRow> table{
      {"clicks, no crank", {"symptom clicks_no_crank"}},
      {"no crank, no click", {"symptom no_crank", "symptom clicks_no_crank absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ALimitIsNoCondition) {
  const std::vector<NoteRow> table{
      {"won't rev past 3000", {"symptom limp_mode"}},
      {"misfire above 3000 rpm", {"symptom misfire", "condition high_revs"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(FindingReader, ADeniedConditionDeniesTheNarrowerSymptom) {
  const std::vector<NoteRow> table{
      {"overheats in traffic, never at speed",
       {"symptom overheats_in_traffic", "symptom overheats_at_speed absent"}},
      {"overheats in traffic only. Not on the open road",
       {"symptom overheats_in_traffic", "symptom overheats_at_speed absent"}},
      {"misfire, never at speed", {"symptom misfire"}},
      {"never at speed", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
