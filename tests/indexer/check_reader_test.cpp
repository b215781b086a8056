#include "indexer/check_reader.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

TEST(CheckReader, AWordSaysHowItWent) {
  const std::vector<NoteRow> table{
      {"linkage stiff by hand", {"check wastegate_linkage_by_hand fail"}},
      {"compression test ok", {"check compression_test pass"}},
      {"injector 2 open circuit", {"check injector_resistance fail"}},
      {"wheel bearing has play", {"check bearing_play fail"}},
      {"fan commanded with tester - nothing", {"check fan_command fail"}},
      {"compression test not ok", {"check compression_test fail"}},
      {"smoke test passed", {"check smoke_test pass"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(CheckReader, ItsNameMayStandTheOtherWayRound) {
  const std::vector<NoteRow> table{{"connector wet", {"check connector_open_look fail"}},
                                   {"wet connector", {"check connector_open_look fail"}},
                                   {"fuse burnt", {"check fuse_look fail"}},
                                   {"burnt fuse", {"check fuse_look fail"}},
                                   {"stuck vanes", {"check vane_sweep_test fail"}},
                                   {"connector green", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(CheckReader, ItMayBeNamedByWhatWasDone) {
  const std::vector<NoteRow> table{
      {"dye showing, leak found", {"check ac_leak_lamp fail"}},
      {"charges fine on another charger", {"check charge_cable_swap pass"}},
      {"fan runs when commanded, ok", {"check fan_command pass"}},
      {"wiggling the loom, no change", {"check wiggle_test pass"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(CheckReader, AReadingSaysItByTheExpectedRange) {
  // Charging voltage 13.8 to 14.8 V: common practice, no source.
  const std::vector<NoteRow> table{
      {"charging voltage 14.2 V", {"check charging_voltage pass", "reading 14.2 V"}},
      {"charging voltage 12100 mV", {"check charging_voltage fail", "reading 12100 mV"}},
      {"charging voltage ok, 12.1 V at the battery",
       {"check charging_voltage pass", "reading 12.1 V"}},
      {"coil primary resistance OL", {"check coil_resistance fail", "reading OL"}},
      {"charging voltage 60 bar", {"reading 60 bar"}},
      {"batt 11.9V cranking voltage 8.2", {"reading 11.9 V"}},
      {"tone ring cracked", {"check tone_ring_look fail"}},
      {"pads 7 mm", {"check brake_pad_measure pass", "reading 7 mm"}},
      {"charging voltage: 14.2 V", {"check charging_voltage pass", "reading 14.2 V"}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

TEST(CheckReader, AnUndoneCheckIsNone) {
  EXPECT_TRUE(lines_of("do a compression test").empty());
  EXPECT_EQ(lines_of("12.1 V somewhere"), std::vector<std::string>{"reading 12.1 V"});
}

TEST(CheckReader, AReadingOfAnotherQuantityIsOfAnotherCheck) {
  const auto lines = lines_of("CAN H 120 ohm, should be half that");
  EXPECT_EQ(std::count_if(
                lines.begin(), lines.end(),
                [](const std::string& line) { return line.starts_with("check network_voltage"); }),
            0);
}

// "check glow_plug_resistance fail OL"
std::string check_with_reading(const std::string& text) {
  for (const RecognisedItem& item : built_in_recogniser().recognise(text).items) {
    if (item.kind != ItemKind::kCheck) continue;
    if (!item.reading) return line_of(item);
    const auto& number = item.reading->number;
    return line_of(item) + " " + (number ? fmt::format("{:.10g}", *number) : item.reading->word);
  }
  return "";
}

TEST(CheckReader, OfSeveralReadingsTheOneOutOfRangeIsKept) {
  const std::pair<const char*, const char*> table[] = {
      {"glow plug resistance 0.5 ohm, 0.6 ohm, OL, 0.7 ohm", "check glow_plug_resistance fail OL"},
      {"glow plug resistance: 1 = 0.6 ohm, 2 = OL bad, 3 = 0.5 ohm",
       "check glow_plug_resistance fail OL"},
      {"glow plug resistance 0.5 ohm, 0.6 ohm", "check glow_plug_resistance pass 0.5"},
      {"battery at rest 12.5 V, 8.2 V while cranking", "check battery_rest_voltage pass 12.5"},
      {"charging voltage measured, 14.2 V", "check charging_voltage pass 14.2"},
      {"charging voltage, however, came to 12.1 V", "check charging_voltage fail 12.1"}};
  for (const auto& [text, line] : table) EXPECT_EQ(check_with_reading(text), line) << text;
}

TEST(CheckReader, AReadingIsOfOneCheckAndATimeOfNone) {
  const std::vector<NoteRow> table{{"solenoid supply 11.9 V on crank, fine",
                                    {"check starter_solenoid_supply pass", "reading 11.9 V"}},
                                   {"12 bar while cranking, hopeless", {"reading 12 bar"}},
                                   {"vents ok", {}}};
  for (const NoteRow& row : table) EXPECT_EQ(lines_of(row.text), row.items) << row.text;
}

}  // namespace
}  // namespace shoplore
