#include "indexer/recogniser.hpp"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <string>
#include <vector>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(Recogniser, UnderstandsTheThreeQuestionsWhole) {
  const std::vector<NoteRow> table{
      {"2016 Brackwater Tidal BW16D 142k km P0299 flat uphill, no whistle, turbo already replaced "
       "elsewhere",
       {"model_year 2016", "make Brackwater", "model Tidal", "engine_family BW16D",
        "mileage 142000", "code P0299", "symptom lack_of_power", "condition uphill",
        "symptom whistle_under_load absent", "earlier_repair replace turbocharger elsewhere"}},
      {"Cormont misfire cylinder 3, coil replaced here four months ago",
       {"make Cormont", "symptom misfire", "earlier_repair replace ignition_coil here"}},
      {"2023 Arlune electric van will not charge, isolation warning",
       {"model_year 2023", "make Arlune", "fuel electric", "symptom will_not_charge",
        "symptom isolation_warning"}}};
  for (const NoteRow& row : table) {
    EXPECT_EQ(lines_of(row.text), row.items) << row.text;
    EXPECT_TRUE(leftover_of(row.text).empty()) << row.text;
  }
}

TEST(Recogniser, SpansAreTheWordsThatWereRead) {
  const std::string text = "flat UPHILL, no whistle, turbo (P 0299) already";
  std::vector<std::string> words;
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    words.push_back(words_at(text, item.span));
  }
  EXPECT_EQ(words, (std::vector<std::string>{"flat", "UPHILL", "whistle", "P 0299"}));
  EXPECT_EQ(leftover_of(text), (std::vector<std::string>{"turbo", "already"}));
}

TEST(Recogniser, LeavesNearMissesAlone) {
  for (const char* text : {"P02G9", "XP0299", "P02991", "P4299", "142000", "1979", "20165",
                           "no P0299", "", "  ", "?!"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text;
  }
}

TEST(Recogniser, ADenialOfAnotherThingIsNoFinding) {
  const std::vector<NoteRow> table{
      {"pulls fine uphill, no power loss", {"symptom lack_of_power absent", "condition uphill"}},
      {"no power complaint", {"symptom lack_of_power absent"}},
      {"no power steering", {"symptom heavy_steering"}},
      {"no power to the fuel pump", {"check fuel_pump_supply fail"}},
      {"flat tyre", {}},
      {"no power uphill", {"symptom lack_of_power", "condition uphill"}},
      {"misfire gone", {"symptom misfire absent"}},
      {"P0299 absent", {}},
      {"P0299, none other", {"code P0299"}}};
  for (const NoteRow& row : table) {
    EXPECT_EQ(lines_of(row.text), row.items) << row.text;
  }
}

TEST(Recogniser, SaysHowItReadAnAmbiguity) {
  const auto bare = built_in_recogniser().recognise("180k");
  ASSERT_EQ(bare.items.size(), 1U);
  EXPECT_EQ(bare.items[0].reading_chosen, "'180k' taken as kilometres");
  const Recogniser miles(built_in_vocabulary(), DistanceUnit::kMiles);
  EXPECT_EQ(miles.recognise("100k").items[0].id, "160934");
  EXPECT_EQ(built_in_recogniser().recognise("turbo replaced").items[0].reading_chosen,
            "not said by whom: taken as elsewhere");
}

TEST(Recogniser, KeepsWhatItDoesNotKnow) {
  EXPECT_EQ(leftover_of("misfire and frobnicates 12.6"),
            (std::vector<std::string>{"frobnicates", "12.6"}));
}

void expect_sound(const std::string& text) {
  const Recognised recognised = built_in_recogniser().recognise(text);
  std::map<ItemKind, std::size_t> ends;
  std::size_t begin = 0;
  for (const RecognisedItem& item : recognised.items) {
    ASSERT_LT(item.span.begin, item.span.end) << text;
    ASSERT_LE(item.span.end, text.size()) << text;
    ASSERT_LE(begin, item.span.begin) << text;
    ASSERT_LE(ends[item.kind], item.span.begin) << text;
    begin = item.span.begin;
    ends[item.kind] = item.span.end;
  }
  begin = 0;
  for (const Span span : recognised.leftover) {
    ASSERT_LE(begin, span.begin) << text;
    ASSERT_LT(span.begin, span.end) << text;
    ASSERT_LE(span.end, text.size()) << text;
    begin = span.end;
  }
}

TEST(Recogniser, SpansOfAKindLieApartInsideAnyText) {
  std::mt19937_64 random(5);  // fixed seed
  const std::vector<std::string> pieces{
      "P0299",   "no",          "not",      "misfire", "cylinder", "3",     "cyl",
      "coil",    "turbo",       "replaced", "new",     "here",     "owner", "and",
      "or",      ",",           ".",        "’",       "–",        "142k",  "km",
      "2016",    "'16",         "w/o",      "r&r'd",   "stiff",    "by",    "hand",
      "linkage", "flat",        "uphill",   "when",    "cold",     "Tidal", "petrol",
      "é",       "€",           "\n",       "&",       "ago",      "four",  "months",
      "good",    "compression", "none",     "every",   "time",     "𝄞",     "\u00a0"};
  for (int i = 0; i < 4'000; ++i) {
    std::string text;
    for (std::uint64_t n = random() % 25; n > 0; --n) {
      text += pieces[random() % pieces.size()];
      if (random() % 5 != 0) text += ' ';
    }
    expect_sound(text);
  }
}

TEST(Recogniser, ALongNoteIsReadToItsEnd) {
  for (const std::string piece : {"coil replaced. ", "turbo new. ", "linkage by hand fine. ",
                                  "no misfire or whistle. ", "frobnicates ", "P 0", "é"}) {
    std::string text;
    while (text.size() < 10'000) text += piece;
    text += " P0299";
    expect_sound(text);
    EXPECT_EQ(built_in_recogniser().recognise(text).items.back().id, "P0299") << piece;
  }
}

TEST(AddRecognised, ALaterWordReplacesTheEarlierOne) {
  Case record;
  add_recognised(record, built_in_recogniser().recognise("misfire when hot, P0301"));
  add_recognised(record, built_in_recogniser().recognise("no misfire, P0301"));
  ASSERT_EQ(record.symptoms.size(), 1U);
  EXPECT_EQ(record.symptoms[0].state, Presence::kAbsent);
  EXPECT_EQ(record.codes.size(), 1U);
  EXPECT_EQ(record.scanned, YesNo::kYes);
}

TEST(AddRecognised, SayingTheSameAgainKeepsWhatIsThere) {
  Case record;
  Symptom misfire;
  misfire.id = "misfire";
  misfire.when = {"cold_start"};
  misfire.reproduced = YesNo::kYes;
  record.symptoms = {misfire};
  Check compression;
  compression.id = "compression_test";
  compression.verdict = Verdict::kPass;
  compression.note = "all four even";
  record.checks = {compression};
  add_recognised(record, built_in_recogniser().recognise("misfire when hot, compression good"));
  ASSERT_EQ(record.symptoms.size(), 1U);
  EXPECT_EQ(record.symptoms[0].when, (std::vector<std::string>{"cold_start", "hot"}));
  EXPECT_EQ(record.symptoms[0].reproduced, YesNo::kYes);
  ASSERT_EQ(record.checks.size(), 1U);
  EXPECT_EQ(record.checks[0].note, "all four even");
  add_recognised(record, built_in_recogniser().recognise("compression bad"));
  EXPECT_EQ(record.checks[0].verdict, Verdict::kFail);
  EXPECT_EQ(record.checks[0].note, "");
}

TEST(AddRecognised, ConditionsGoToTheNearestSymptom) {
  Case record;
  add_recognised(record, built_in_recogniser().recognise("uphill flat, misfire when hot"));
  ASSERT_EQ(record.symptoms.size(), 2U);
  EXPECT_EQ(record.symptoms[0].when, std::vector<std::string>{"uphill"});
  EXPECT_EQ(record.symptoms[1].when, std::vector<std::string>{"hot"});
}

}  // namespace
}  // namespace shoplore
