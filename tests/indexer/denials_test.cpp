#include "indexer/denials.hpp"

#include <gtest/gtest.h>

#include "indexer/note_words.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"
#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(Denials, ANegationIsHeardWhereverItStands) {
  for (const char* text :
       {"no misfire", "not misfiring", "misfire: none", "misfire: nil", "misfire gone",
        "the misfire is gone", "misfire cured", "misfire no longer there", "misfire not heard",
        "misfire hasn't come back", "misfire has not been noticed", "never misfires",
        "doesn't misfire", "without any misfire", "no sign of a misfire"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom misfire absent"}) << text;
  }
}

TEST(Denials, WhatIsNotDeniedStays) {
  for (const char* text :
       {"didn't cure the misfire", "did not help the misfire", "misfire not fixed",
        "misfire has gone to cylinder 2", "not always misfiring", "no warning, misfire",
        "no fault found but misfire", "misfire, not yet looked at"}) {
    const auto lines = lines_of(text);
    EXPECT_NE(std::find(lines.begin(), lines.end(), "symptom misfire"), lines.end()) << text;
  }
}

TEST(Denials, AListIsDeniedToItsOr) {
  const std::vector<NoteRow> table{
      {"no misfire, whistle or black smoke",
       {"symptom misfire absent", "symptom whistle_under_load absent",
        "symptom black_smoke absent"}},
      {"no misfire nor whistle", {"symptom misfire absent", "symptom whistle_under_load absent"}},
      {"no misfire, whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"no misfire, whistle and black smoke",
       {"symptom misfire absent", "symptom whistle_under_load", "symptom black_smoke"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, ASymptomIsDeniedBetweenItsWordsAndByBeingWell) {
  const std::vector<NoteRow> table{{"clutch does not slip", {"symptom clutch_slips absent"}},
                                   {"clutch slips", {"symptom clutch_slips"}},
                                   {"horn ok", {"symptom horn_dead absent"}},
                                   {"horn works", {"symptom horn_dead absent"}},
                                   {"horn dead", {"symptom horn_dead"}},
                                   {"abs lamp not on", {"symptom abs_lamp_on absent"}},
                                   {"abs lamp off", {"symptom abs_lamp_on absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, AnOrderIsNoFinding) {
  EXPECT_TRUE(lines_of("DO NOT CRANK").empty());
  EXPECT_EQ(lines_of("does not crank"), std::vector<std::string>{"symptom no_crank"});
}

TEST(Denials, WhatWasSaidIsTakenBack) {
  for (const char* text :
       {"says it misfires, but I drove it and it doesn't", "owner says it misfires. It does not.",
        "it misfires he says but it didn't"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom misfire absent"}) << text;
  }
  for (const char* text : {"misfires and it doesn't matter", "misfires, no code, it does not pass",
                           "it misfires and he does not care", "misfires. It does."}) {
    const auto lines = lines_of(text);
    EXPECT_NE(std::find(lines.begin(), lines.end(), "symptom misfire"), lines.end()) << text;
  }
}

TEST(Denials, ALampIsOutInManyWords) {
  for (const char* text :
       {"abs lamp is off", "abs lamp stays off", "abs lamp has stayed off",
        "abs lamp on the dash stays off", "abs lamp dark", "abs lamp does not light",
        "abs lamp not lit", "abs lamp no longer on", "abs lamp went out", "abs lamp: off"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom abs_lamp_on absent"}) << text;
  }
  for (const char* text : {"abs lamp on", "abs lamp stays on", "abs lamp lit", "abs lamp"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom abs_lamp_on"}) << text;
  }
}

TEST(Denials, WhatHasStoppedIsNoMore) {
  for (const char* text :
       {"clutch has stopped slipping", "clutch no longer slips", "clutch slips no more",
        "clutch would not slip for me", "far from clutch slip", "that rules out clutch slip",
        "clutch neither slips"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom clutch_slips absent"}) << text;
  }
  for (const char* text :
       {"can't confirm clutch slip", "no it has clutch slip", "clutch still slips"}) {
    EXPECT_EQ(lines_of(text), std::vector<std::string>{"symptom clutch_slips"}) << text;
  }
}

TEST(Denials, TheDenialOfBeingWellIsTheSymptom) {
  const std::vector<NoteRow> table{{"neither key is recognised", {"symptom key_not_recognised"}},
                                   {"handbrake as good as useless", {"symptom parking_brake_weak"}},
                                   {"the car is now fine", {}},
                                   {"window works as it should", {"symptom window_dead absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, TheAnswerOfSomebodyElseDenies) {
  const std::vector<NoteRow> table{
      {"Does the clutch slip? Customer says no.", {"symptom clutch_slips absent"}},
      {"Clutch slip? He says no", {"symptom clutch_slips absent"}},
      {"Clutch slip? Customer says yes", {"symptom clutch_slips"}},
      {"Is there a misfire? can't say", {}},
      {"Misfire? not checked", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, NoAsAnAnswerDeniesNothingBehindIt) {
  const std::vector<NoteRow> table{
      {"and no the engine light is not on", {"symptom engine_lamp_on absent"}},
      {"no the clutch slips", {"symptom clutch_slips"}},
      {"doesn't start, just clicks", {"symptom no_start", "symptom clicks_no_crank"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, WhatIsCalledWrongIsTurnedRound) {
  const std::vector<NoteRow> table{
      {"clutch slips / wrong / judders", {"symptom clutch_slips absent", "symptom clutch_judders"}},
      {"No clutch slip? Wrong, there is", {"symptom clutch_slips"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, AThingThatIsWellIsNoSymptom) {
  const std::vector<NoteRow> table{{"immobiliser ok", {"symptom immobiliser_lamp absent"}},
                                   {"EML off", {"symptom engine_lamp_on absent"}},
                                   {"MIL now out", {"symptom engine_lamp_on absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, AnOrderBehindAWarningDoesNotDenyIt) {
  for (const char* order : {"do not drive", "dont touch orange cables", "not cleared"}) {
    const auto lines = lines_of(std::string("isolation warning ") + order);
    EXPECT_EQ(lines, std::vector<std::string>{"symptom isolation_warning"}) << order;
  }
}

// Else any "not" behind the symptom's name would deny it, whatever comes after.
TEST(Denials, NoContraryEndsInABareNegation) {
  for (const auto& [id, entry] : built_in_vocabulary().entries(EntryKind::kSymptom)) {
    for (const std::string& contrary : entry.contraries) {
      std::vector<std::string> words;
      for (const Word& word : words_of(contrary)) words.push_back(word.text);
      EXPECT_FALSE(is_negation(phrase_form(words).back())) << id << ": " << contrary;
    }
  }
}

TEST(Denials, AQuestionWhetherAllIsWellDeniesNothing) {
  EXPECT_EQ(lines_of("brakes grind ok?"), std::vector<std::string>{"symptom brake_grinding"});
}

TEST(Denials, ASearchInVainAnswersAQuestion) {
  const std::vector<NoteRow> table{{"Oil leak? Can't see one", {"symptom oil_leak absent"}},
                                   {"Misfire? couldn't find any", {"symptom misfire absent"}},
                                   {"Oil leak? I can see one", {"symptom oil_leak"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Denials, ALampMayNoLongerComeOn) {
  const std::vector<NoteRow> table{{"abs light no longer comes on", {"symptom abs_lamp_on absent"}},
                                   {"abs light never lights", {"symptom abs_lamp_on absent"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
