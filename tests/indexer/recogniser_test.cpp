#include "indexer/recogniser.hpp"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

const Recogniser& recogniser() {
  static const Recogniser made(vocabulary());
  return made;
}

// "symptom misfire", "symptom whistle_under_load absent", ...: an item as one line.
std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const RecognisedItem& item : recogniser().recognise(text).items) {
    std::string line = std::string(name_of(item.kind)) + " " + item.id;
    if (item.state == Presence::kAbsent) line += " absent";
    if (item.verdict) line += " " + std::string(name_of(*item.verdict));
    if (item.repair) line += " " + std::string(name_of(item.repair->by));
    lines.push_back(line);
  }
  return lines;
}

std::vector<std::string> leftover_of(const std::string& text) {
  std::vector<std::string> words;
  for (const Span span : recogniser().recognise(text).leftover) {
    words.push_back(text.substr(span.begin, span.end - span.begin));
  }
  return words;
}

struct Row {
  const char* text;
  std::vector<std::string> items;
};

TEST(Recogniser, UnderstandsTheThreeQuestionsWhole) {
  const std::vector<Row> table{
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
  for (const Row& row : table) {
    EXPECT_EQ(lines_of(row.text), row.items) << row.text;
    EXPECT_TRUE(leftover_of(row.text).empty()) << row.text;
  }
}

TEST(Recogniser, ReadsNumbersAsWritten) {
  const std::vector<Row> table{
      {"p0299", {"code P0299"}},          {"P 0299", {"code P0299"}},
      {"P0299-00", {"code P0299"}},       {"U0073:04", {"code U0073"}},
      {"142,000 km", {"mileage 142000"}}, {"88000 miles", {"mileage 141622"}},
      {"100k mi", {"mileage 160934"}},    {"180k", {"mileage 180000"}},
      {"88.5k km", {"mileage 88500"}},    {"'16", {"model_year 2016"}},
      {"1998", {"model_year 1998"}}};
  for (const Row& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Recogniser, LeavesNearMissesAlone) {
  for (const char* text : {"P02G9", "XP0299", "P02991", "P4299", "142000", "1979", "20165",
                           "12.6 V", "0.4 ohm", "2.1 bar", "", "  ", "?!"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text;
  }
}

TEST(Recogniser, NegationTurnsASymptomRoundWithinItsClause) {
  const std::vector<Row> table{
      {"no misfire", {"symptom misfire absent"}},
      {"misfire: none", {"symptom misfire absent"}},
      {"no misfire, whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"no misfire or whistle", {"symptom misfire absent", "symptom whistle_under_load absent"}},
      {"no misfire but whistle", {"symptom misfire absent", "symptom whistle_under_load"}},
      {"no power", {"symptom lack_of_power"}},
      {"misfiring", {"symptom misfire"}}};
  for (const Row& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(Recogniser, SaysHowItReadAnAmbiguity) {
  const auto bare = recogniser().recognise("180k");
  ASSERT_EQ(bare.items.size(), 1U);
  EXPECT_EQ(bare.items[0].reading_chosen, "'180k' taken as kilometres");
  const Recogniser miles(vocabulary(), DistanceUnit::kMiles);
  EXPECT_EQ(miles.recognise("100k").items[0].id, "160934");
  EXPECT_EQ(recogniser().recognise("turbo replaced").items[0].reading_chosen,
            "not said by whom: taken as elsewhere");
}

TEST(Recogniser, KeepsWhatItDoesNotKnow) {
  EXPECT_EQ(leftover_of("misfire and frobnicates"), std::vector<std::string>{"frobnicates"});
}

TEST(Recogniser, SpansLieInsideAnyTextAndNothingCrashes) {
  std::mt19937_64 random(5);
  const std::string letters = "P0299 nomisfire,.'k km16\n&/-:";
  for (int i = 0; i < 2'000; ++i) {
    std::string text;
    for (std::uint64_t n = random() % 60; n > 0; --n) text += letters[random() % letters.size()];
    for (const RecognisedItem& item : recogniser().recognise(text).items) {
      ASSERT_LE(item.span.begin, item.span.end) << text;
      ASSERT_LE(item.span.end, text.size()) << text;
    }
  }
}

TEST(AddRecognised, ALaterWordReplacesTheEarlierOne) {
  Case record;
  add_recognised(record, recogniser().recognise("misfire when hot, P0301"));
  add_recognised(record, recogniser().recognise("no misfire, P0301"));
  ASSERT_EQ(record.symptoms.size(), 1U);
  EXPECT_EQ(record.symptoms[0].state, Presence::kAbsent);
  EXPECT_EQ(record.codes.size(), 1U);
  EXPECT_EQ(record.scanned, YesNo::kYes);
}

}  // namespace
}  // namespace shoplore
