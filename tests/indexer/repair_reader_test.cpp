#include "indexer/repair_reader.hpp"

#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

constexpr const char* kTurboElsewhere = "earlier_repair replace turbocharger elsewhere";

TEST(RepairReader, ReadsWorkDoneAndByWhom) {
  const std::vector<NoteRow> table{
      {"turbo already replaced elsewhere", {kTurboElsewhere}},
      {"turbo changed by dealer last month", {kTurboElsewhere}},
      {"another garage fitted a new turbo", {kTurboElsewhere}},
      {"turbo replaced in 2019 elsewhere", {kTurboElsewhere}},
      {"new turbo", {kTurboElsewhere}},
      {"second turbo", {kTurboElsewhere}},
      {"turbo has been renewed", {kTurboElsewhere}},
      {"coil replaced here four months ago", {"earlier_repair replace ignition_coil here"}},
      {"we replaced the coil", {"earlier_repair replace ignition_coil here"}},
      {"new coil fitted by owner", {"earlier_repair replace ignition_coil owner"}},
      {"battery swapped by the owner himself", {"earlier_repair replace battery owner"}},
      {"battery is new", {"earlier_repair replace battery elsewhere"}},
      {"EGR cleaned here last year", {"earlier_repair clean egr_valve here"}},
      {"coil R&R'd here", {"earlier_repair replace ignition_coil here"}},
      {"gearbox fluid changed here", {"earlier_repair change_fluid gearbox_fluid here"}}};
  for (const NoteRow& row : table) {
    EXPECT_EQ(lines_of(row.text), row.items) << row.text;
    EXPECT_TRUE(leftover_of(row.text).empty()) << row.text << ": " << leftover_of(row.text)[0];
  }
}

TEST(RepairReader, JoinedComponentsShareTheWork) {
  const std::vector<NoteRow> table{
      {"coil and plugs replaced elsewhere",
       {"earlier_repair replace ignition_coil elsewhere",
        "earlier_repair replace spark_plug elsewhere"}},
      {"replaced coil & plugs here",
       {"earlier_repair replace ignition_coil here", "earlier_repair replace spark_plug here"}},
      {"coil/plugs replaced here",
       {"earlier_repair replace ignition_coil here", "earlier_repair replace spark_plug here"}},
      {"turbo replaced here coil replaced by owner",
       {"earlier_repair replace turbocharger here", "earlier_repair replace ignition_coil owner"}},
      {"turbo replaced coil misfire", {kTurboElsewhere, "symptom misfire"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairReader, WorkWantedOrDeniedIsNone) {
  for (const char* text :
       {"needs new turbo", "turbo not replaced", "turbo never replaced", "replace turbo",
        "turbo needs to be replaced", "turbo to be replaced", "turbo should be replaced",
        "should we replace the turbo?", "quoted for new turbo", "no new turbo", "replaced", "turbo",
        "turbo, replaced"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text << ": " << lines_of(text)[0];
    EXPECT_FALSE(leftover_of(text).empty()) << text;
  }
}

TEST(RepairReader, TheCureThatFailedIsStillARepair) {
  EXPECT_EQ(lines_of("not cured by new turbo elsewhere"),
            std::vector<std::string>{kTurboElsewhere});
}

// A condition such as "since new tyres" tells of the work as well.
TEST(RepairReader, AComponentInsideASymptomIsNone) {
  EXPECT_EQ(lines_of("new battery light on"), std::vector<std::string>{"symptom charge_lamp_on"});
  EXPECT_EQ(lines_of("vibration since new tyres"),
            (std::vector<std::string>{"symptom vibration_at_speed", "condition after_tyres",
                                      "earlier_repair replace tyre elsewhere"}));
}

TEST(RepairReader, OnlyTheWordsAroundSayWho) {
  const auto items = built_in_recogniser().recognise("coil replaced and we heard whistle").items;
  ASSERT_EQ(items.size(), 2U);
  EXPECT_EQ(line_of(items[0]), "earlier_repair replace ignition_coil elsewhere");
  EXPECT_EQ(items[0].reading_chosen, "not said by whom: taken as elsewhere");
  EXPECT_EQ(leftover_of("turbo replaced 8 ponies"), (std::vector<std::string>{"8", "ponies"}));
}

TEST(RepairReader, ADistanceSinceIsNotTheMileage) {
  EXPECT_EQ(lines_of("coil replaced 5,000 km ago here"),
            std::vector<std::string>{"earlier_repair replace ignition_coil here"});
}

}  // namespace
}  // namespace shoplore
