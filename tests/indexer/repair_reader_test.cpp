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
      {"another garage cleaned the sunroof drains",
       {"earlier_repair clean sunroof_drain elsewhere"}},
      {"already been through two turbos", {kTurboElsewhere}},
      {"fan relay changed last month elsewhere", {"earlier_repair replace relay elsewhere"}},
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
        "should we replace the turbo?", "turbo replaced?", "new turbo needed", "fit new turbo",
        "wants a price for new turbo", "quoted for new turbo", "no new turbo", "replaced", "turbo",
        "turbo, replaced"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text << ": " << lines_of(text)[0];
    EXPECT_FALSE(leftover_of(text).empty()) << text;
  }
}

TEST(RepairReader, TheSentenceSaysWho) {
  const std::vector<NoteRow> table{
      {"we put a crank sensor in it two weeks ago",
       {"earlier_repair replace crankshaft_sensor here"}},
      {"other garage change thermostat", {"earlier_repair replace thermostat elsewhere"}},
      {"customer changed the battery", {"earlier_repair replace battery owner"}},
      {"battery changed by cust", {"earlier_repair replace battery owner"}},
      {"battery he put in himself", {"earlier_repair replace battery owner"}},
      {"he fitted a new battery", {"earlier_repair replace battery owner"}},
      {"customer says battery replaced", {"earlier_repair replace battery elsewhere"}},
      {"customer had a new battery fitted", {"earlier_repair replace battery elsewhere"}},
      {"battery changed by previous owner", {"earlier_repair replace battery elsewhere"}},
      {"battery new 3 yrs ago, us", {"earlier_repair replace battery here"}},
      {"battery new, not by us", {"earlier_repair replace battery elsewhere"}},
      {"battery is new, customer put it 2 month ago", {"earlier_repair replace battery owner"}},
      {"the chap before us put a new turbo in", {kTurboElsewhere}},
      {"turbo by the last owner's mechanic", {kTurboElsewhere}},
      {"last garage put a turbo and a map sensor on it",
       {kTurboElsewhere, "earlier_repair replace boost_sensor elsewhere"}},
      {"had the clutch done elsewhere", {"earlier_repair replace clutch elsewhere"}},
      {"injector replaced and coded by us",
       {"earlier_repair replace injector here", "earlier_repair code_in injector here"}},
      {"front pads done 20k ago", {"earlier_repair replace brake_pad elsewhere"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairReader, APartThatChangedPlacesIsATest) {
  for (const char* text : {"swapped coil 1 and 3", "swapped coils over",
                           "pump relay swapped, relay good", "we swapped the coils",
                           "changed coils round", "tried another coil", "fitted known good coil",
                           "car charges on another charge cable", "swapped with another coil"}) {
    for (const std::string& line : lines_of(text)) {
      EXPECT_FALSE(line.starts_with("earlier_repair")) << text << ": " << line;
    }
  }
  EXPECT_EQ(lines_of("battery swapped a month ago by recovery firm"),
            std::vector<std::string>{"earlier_repair replace battery elsewhere"});
}

TEST(RepairReader, AnotherPartNearTheWorkIsNotItsPart) {
  for (const char* text :
       {"new seal for the turbo", "put a scope on the injector", "put the battery on charge",
        "the turbo did not come on", "head gasket test done", "bleed was never done, turbo",
        "needs new turbo by dealer", "turbo is 2 years old"}) {
    EXPECT_TRUE(lines_of(text).empty()) << text << ": " << lines_of(text)[0];
  }
  EXPECT_EQ(lines_of("cleaned the throttle body and replaced the maf"),
            (std::vector<std::string>{"earlier_repair clean throttle_body elsewhere",
                                      "earlier_repair replace air_mass_meter elsewhere"}));
  EXPECT_EQ(lines_of("thermostat changed in spring"),
            std::vector<std::string>{"earlier_repair replace thermostat elsewhere"});
}

TEST(RepairReader, ListsGoOnOverCommas) {
  EXPECT_EQ(lines_of("replaced coil, plugs and thermostat"),
            (std::vector<std::string>{"earlier_repair replace ignition_coil elsewhere",
                                      "earlier_repair replace spark_plug elsewhere",
                                      "earlier_repair replace thermostat elsewhere"}));
  EXPECT_EQ(lines_of("starter new, battery new, both fitted by owner"),
            (std::vector<std::string>{"earlier_repair replace starter_motor owner",
                                      "earlier_repair replace battery owner"}));
}

TEST(RepairReader, ReadsHowLongAgo) {
  const std::vector<std::pair<const char*, std::optional<int>>> table{
      {"coil replaced 4 mo ago", 4},
      {"coil replaced 2mo back", 2},
      {"coil replaced a year ago", 12},
      {"coil replaced half a year ago", 6},
      {"coil replaced last month", 1},
      {"coil replaced couple of months ago", 2},
      {"battery 3 months old", 3},
      {"5 months ago other garage put new coils", 5},
      {"coil new, fitted 2 yrs ago", 24},
      {"coil replaced last week", 0},
      {"I change battery 2 months ago", 2},
      {"coil replaced 3 months earlier", 3},
      {"coil replaced 3 months previously", 3},
      {"coil replaced here", std::nullopt},
      {"coil replaced 3 months before sale", std::nullopt}};
  for (const auto& [text, months] : table) {
    const auto items = built_in_recogniser().recognise(text).items;
    ASSERT_EQ(items.size(), 1U) << text;
    EXPECT_EQ(items[0].months_ago, months) << text;
  }
}

TEST(RepairReader, SaidTwiceItIsOneRepair) {
  EXPECT_EQ(lines_of("I fitted the battery last week, new battery not coded"),
            std::vector<std::string>{"earlier_repair replace battery here"});
}

TEST(RepairReader, AFluidIsDrainedAndRefilled) {
  EXPECT_EQ(lines_of("coolant replaced here"),
            std::vector<std::string>{"earlier_repair change_fluid coolant here"});
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

TEST(RepairReader, WorkIsNamedByItsNounToo) {
  const std::vector<NoteRow> table{
      {"since the thermostat replacement", {"earlier_repair replace thermostat elsewhere"}},
      {"water pump change at the dealer", {"earlier_repair replace water_pump elsewhere"}},
      {"thermostat replacement advised", {}},
      {"thermostat replacement", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairReader, ALookIsNoRepair) {
  for (const char* text :
       {"new battery in the key", "gearbox oil drained, silver in it", "refitted the turbo"}) {
    const auto lines = lines_of(text);
    EXPECT_TRUE(std::none_of(lines.begin(), lines.end(), [](const std::string& line) {
      return line.starts_with("earlier");
    })) << text;
  }
  EXPECT_EQ(lines_of("gearbox oil drained and refilled here"),
            std::vector<std::string>{"earlier_repair change_fluid gearbox_oil here"});
  EXPECT_EQ(lines_of("did the leak-off test, ok"),
            std::vector<std::string>{"check injector_leak_off pass"});
}

TEST(RepairReader, PersonsStandInManyForms) {
  const std::vector<NoteRow> table{
      {"we'd replaced the thermostat", {"earlier_repair replace thermostat here"}},
      {"you replaced the thermostat", {"earlier_repair replace thermostat here"}},
      {"your lad replaced the thermostat", {"earlier_repair replace thermostat here"}},
      {"my husband replaced the thermostat", {"earlier_repair replace thermostat elsewhere"}},
      {"the man before you replaced the thermostat",
       {"earlier_repair replace thermostat elsewhere"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(RepairReader, WhatAClauseSaysAtItsEndIsSaidOfAllItsWork) {
  const std::vector<NoteRow> table{
      {"handbrake cable adjusted and coil replaced by us",
       {"earlier_repair adjust handbrake_cable here", "earlier_repair replace ignition_coil here"}},
      {"coil replaced by owner and battery replaced by us",
       {"earlier_repair replace ignition_coil owner", "earlier_repair replace battery here"}},
      {"regassed and condenser replaced by us",
       {"earlier_repair charge ac_refrigerant here", "earlier_repair replace ac_condenser here"}},
      {"gearbox oil and filter changed by us",
       {"earlier_repair change_fluid gearbox_oil here", "earlier_repair replace oil_filter here"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
