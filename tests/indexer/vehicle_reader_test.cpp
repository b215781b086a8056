#include "indexer/vehicle_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(VehicleReader, ReadsTheVocabularysNamesInAnyCase) {
  const std::vector<NoteRow> table{
      {"Brackwater Tidal BW16D diesel",
       {"make Brackwater", "model Tidal", "engine_family BW16D", "fuel diesel"}},
      {"brackwater tidal bw16d", {"make Brackwater", "model Tidal", "engine_family BW16D"}},
      {"TIDAL", {"model Tidal"}},
      {"Cormont Fell", {"make Cormont", "model Fell"}},
      {"cormont fell", {"make Cormont", "model Fell"}},
      {"Tidal, a Brackwater Tidal", {"model Tidal", "make Brackwater"}}};
  for (const NoteRow& row : table) {
    EXPECT_EQ(lines_of(row.text), row.items) << row.text;
    EXPECT_TRUE(leftover_of(row.text).empty()) << row.text;
  }
}

TEST(VehicleReader, AModelNamedLikeAWordNeedsASign) {
  EXPECT_TRUE(lines_of("revs fell").empty());
  EXPECT_EQ(lines_of("Brackwater revs fell"), std::vector<std::string>{"make Brackwater"});
}

TEST(VehicleReader, OfSeveralTheFirstCounts) {
  EXPECT_EQ(lines_of("Brackwater Tidal next to a Cormont"),
            (std::vector<std::string>{"make Brackwater", "model Tidal"}));
  EXPECT_EQ(leftover_of("Brackwater Cormont"), std::vector<std::string>{"Cormont"});
}

TEST(VehicleReader, AFuelOfSomethingElseIsNotTheVehicles) {
  for (const char* text : {"electric window", "petrol pump", "exhaust gas", "smell of diesel",
                           "electric parking brake", "does it ev time", "ev single start"}) {
    for (const std::string& line : lines_of(text)) EXPECT_FALSE(line.starts_with("fuel")) << text;
  }
  EXPECT_EQ(lines_of("smells of petrol"), std::vector<std::string>{"symptom fuel_smell"});
}

TEST(VehicleReader, KnowsNamesOfSeveralWords) {
  const auto vocabulary = Vocabulary::parse(
      {{"own", R"({"kind":"vehicle_model","entries":[)"
               R"({"id":"a","name":"Sea Mist","make":"Dun Marrow","engine_families":["X-1"]}]})"}});
  ASSERT_TRUE(vocabulary);
  const Recogniser recogniser(*vocabulary);
  const auto items = recogniser.recognise("dun marrow Sea mist X-1 sea").items;
  ASSERT_EQ(items.size(), 3U);
  EXPECT_EQ(line_of(items[0]), "make Dun Marrow");
  EXPECT_EQ(line_of(items[1]), "model Sea Mist");
  EXPECT_EQ(line_of(items[2]), "engine_family X-1");
}

}  // namespace
}  // namespace shoplore
