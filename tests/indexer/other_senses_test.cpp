#include "indexer/other_senses.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_pages.hpp"

namespace shoplore {
namespace {

// The words from the first of these to the last, as a match.
PhraseMatch match_of(const NotePage& page, std::string_view first, std::string_view last,
                     EntryKind kind) {
  return {kind, "", token_of(page, first), token_of(page, last) + 1};
}

struct Row {
  const char *text, *first, *last;
};

TEST(OtherSenses, PowerAndFlatBelongToTheWordThatTakesThem) {
  for (const Row& row :
       {Row{"no power steering", "no", "power"}, Row{"flat tyre", "flat", "flat"},
        Row{"no power at the pump", "no", "power"}, Row{"battery goes flat", "flat", "flat"},
        Row{"never on the flat", "flat", "flat"}, Row{"do not crank", "not", "crank"}}) {
    const NotePage page = page_of(row.text);
    EXPECT_TRUE(is_another_thing(page, match_of(page, row.first, row.last, EntryKind::kSymptom)))
        << row.text;
  }
  for (const Row& row :
       {Row{"no power uphill", "no", "power"}, Row{"no power", "no", "power"},
        Row{"no power at all", "no", "power"}, Row{"flat uphill", "flat", "flat"},
        Row{"it goes flat", "flat", "flat"}, Row{"it does not crank", "not", "crank"}}) {
    const NotePage page = page_of(row.text);
    EXPECT_FALSE(is_another_thing(page, match_of(page, row.first, row.last, EntryKind::kSymptom)))
        << row.text;
  }
}

TEST(OtherSenses, ABareWordOfHeatIsAConditionAtTheBeginningOfAClauseOnly) {
  struct Case {
    const char *text, *word;
    bool is_other;
  };
  for (const Case& row : {Case{"takes ages to warm", "warm", true}, Case{"heater hot", "hot", true},
                          Case{"last summer", "summer", true}, Case{"misfire, hot", "hot", false},
                          Case{"hot", "hot", false}, Case{"in summer", "summer", false}}) {
    const NotePage page = page_of(row.text);
    const auto match = match_of(page, row.word, row.word, EntryKind::kCondition);
    EXPECT_EQ(is_other_condition(page, match), row.is_other) << row.text;
  }
  const NotePage page = page_of("heater hot");
  EXPECT_FALSE(is_other_condition(page, match_of(page, "hot", "hot", EntryKind::kSymptom)));
}

TEST(OtherSenses, WarmthOfAThingIsNoTime) {
  for (const char* text : {"wheel gets really hot", "stone hot", "engine becomes too hot",
                           "the heating never gets hot"}) {
    const NotePage page = page_of(text);
    EXPECT_TRUE(is_warmth_of_a_thing(page, token_of(page, "hot"))) << text;
  }
  for (const char* text : {"misfire hot", "hot", "gets. hot", "misfires when it gets hot",
                           "stalls once the engine gets properly hot", "only if it gets hot"}) {
    const NotePage page = page_of(text);
    EXPECT_FALSE(is_warmth_of_a_thing(page, token_of(page, "hot"))) << text;
  }
}

TEST(OtherSenses, AVerbOrAColourIsNoFinding) {
  for (const Row& row :
       {Row{"flap does not go up", "does", "go"},
        Row{"could not fault the brakes", "fault", "brakes"}, Row{"fluid pink", "pink", "pink"},
        Row{"could not get gear lamp to flash", "not", "gear"}}) {
    const NotePage page = page_of(row.text);
    EXPECT_TRUE(is_another_thing(page, match_of(page, row.first, row.last, EntryKind::kSymptom)))
        << row.text;
  }
  for (const Row& row :
       {Row{"it does not go", "does", "go"}, Row{"brake fault", "brake", "fault"},
        Row{"engine pinking", "pinking", "pinking"}, Row{"could not get gear", "not", "gear"}}) {
    const NotePage page = page_of(row.text);
    EXPECT_FALSE(is_another_thing(page, match_of(page, row.first, row.last, EntryKind::kSymptom)))
        << row.text;
  }
}

TEST(OtherSenses, WhereAllIsWellAndWhereAThingIsAreNoConditions) {
  struct Case {
    const char *text, *first, *last;
    bool is_other;
  };
  for (const Case& row : {Case{"fine on the motorway", "on", "motorway", true},
                          Case{"not fine on the motorway", "on", "motorway", false},
                          Case{"brakes on the rollers", "brakes", "on", true},
                          Case{"squeals brakes on", "brakes", "on", false},
                          Case{"misfire on the motorway", "on", "motorway", false}}) {
    const NotePage page = page_of(row.text);
    const auto match = match_of(page, row.first, row.last, EntryKind::kCondition);
    EXPECT_EQ(is_other_condition(page, match), row.is_other) << row.text;
  }
}

TEST(OtherSenses, AMotorThatIsMeasuredStallsAndAnEngineThatRunsWellIsNoCondition) {
  const std::vector<NoteRow> table{
      {"actuator draws 14 A, stalls", {"reading 14 A"}},
      {"engine stalls", {"symptom stalls"}},
      {"misfire, the engine runs lovely otherwise", {"symptom misfire"}},
      {"heater one side stone cold", {"symptom heater_one_side"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(OtherSenses, AFluidAndASmellAreOfTheThingSpokenOf) {
  const std::vector<NoteRow> table{
      {"no drive, fluid 2 litres low",
       {"symptom slipping_gearbox", "check gearbox_fluid_look fail"}},
      {"brake fluid low", {"symptom brake_fluid_low"}},
      {"burnt smell behind the dash", {"symptom burning_smell_electrical"}},
      {"oil leak. burning smell behind the radio",
       {"symptom oil_leak", "symptom burning_smell_electrical"}},
      {"blower motor noisy. stalls", {"symptom blower_noise", "symptom stalls"}},
      {"clutch slips, burnt smell", {"symptom clutch_slips"}},
      {"display unplugged and replugged", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
