// Which work needs which warning, told here by the words of an entry's id and not by the
// vocabulary's own lists. Rules are common practice, no source.
#include <gtest/gtest.h>

#include <regex>
#include <string>
#include <vector>

#include "tests/indexer/note_lines.hpp"

namespace shoplore {
namespace {

constexpr EntryKind kS = EntryKind::kSymptom, kK = EntryKind::kCheck, kR = EntryKind::kRemoval,
                    kP = EntryKind::kComponent;

struct Rule {
  const char* caution;
  std::vector<EntryKind> kinds;
  const char* about;                // searched in the id
  std::vector<const char*> not_of;  // ids that only look alike
};

const std::vector<Rule>& rules() {
  static const std::vector<Rule> all{
      {"jack_is_no_support",
       {kR, kK},
       "^wheel$|undertray|caliper|hub|drive_shaft|exhaust_front|bearing_play|wheel_spin|tone_ring|"
       "ball_joint|bush|track_rod_play|damper_look|spring_look|cv_boot|prop_joint|gearbox_out|"
       "subframe|sump_off|brake_hose|brake_pipe|pad_measure|disc_|filter_hose_look|diff_oil",
       {}},
      {"lift_balance",
       {kR},
       "gearbox_out|engine_mount_off|subframe|fuel_tank_out|battery_pack_lowered",
       {}},
      {"hot_coolant",
       {kS, kK, kR, kP},
       "overheat|boil|coolant_loss|steam|cooling_pressure|cap_test|block_test|thermostat|radiator|"
       "head_gasket|water_pump|bubbl|heater_core|expansion_tank",
       {"battery_boils"}},
      {"hot_exhaust",
       {kK, kR, kP},
       "turbo|exhaust|wastegate|egr|catalyst|back_pressure|heat_shield|oxygen|nox|silencer",
       {}},
      {"filter_regeneration_heat",
       {kS, kK, kP},
       "regeneration|particulate|filter_pressure|filter_soot|filter_lamp|filter_hose",
       {}},
      {"exhaust_fumes_indoors", {kS}, "smoke|exhaust", {"smoke_from_wiring"}},
      {"self_starting_fans",
       {kS, kK, kP, kR},
       "belt|fan|alternator|running",
       {"seat_belt_lamp_on", "seat_belt_tensioner", "timing_belt", "battery_fan_noise"}},
      {"injection_injury",
       {kK, kP, kS, kR},
       "rail_pressure|injector_leak|injectors_out|high_pressure_pump|fuel_rail|injector_return|"
       "knock_diesel|metering_valve",
       {}},
      {"petrol_vapour",
       {kS, kK, kP, kR},
       "fuel_smell|fuel_leak|fuel_tank|fuel_line|purge|refuel|fuel_pressure|fuel_pump|charcoal|"
       "tank_vent|fuel_sample|fuel_filter",
       {"fuel_pump_relay"}},
      {"refrigerant",
       {kS, kK, kP, kR},
       "^ac_|refrigerant|heat_pump|air_con_(warm|leak|no_cold|compressor)",
       {"ac_vent_temperature", "ac_clutch_gap", "ac_clutch"}},
      {"air_suspension_pressure",
       {kS, kK, kP, kR},
       "air_spring|air_suspension|air_line|air_compressor|ride_height|sits_low|compressor_runs",
       {}},
      {"accumulator_pressure", {kP}, "abs_unit|abs_pump|brake_pressure_sensor", {}},
      {"springs",
       {kP, kK, kR},
       "coil_spring|strut|top_mount|spring_look|leaf_spring|brake_drum|brake_shoe|^damper$|"
       "valve_spring",
       {}},
      {"airbag_igniter",
       {kS, kK, kP, kR},
       "airbag|seat_belt|clock_spring|crash_sensor|seat_occupancy|^seat$|dash_panel|bumper",
       {}},
      {"high_voltage",
       {kS, kK, kP, kR},
       "isolation|hybrid|traction|charge_(port|flap|cable|log)|charges_|charging_stops|"
       "will_not_charge|range_dropped|electric_drive|inverter|onboard|high_voltage|^hv_|pack_|"
       "battery_pack|ready_lamp|drive_motor|heat_pump|dc_converter|service_disconnect|cell_module|"
       "regenerative|battery_fan|battery_cooling",
       {}},
      {"ignition_high_voltage",
       {kS, kK, kP},
       "misfire|ignition_coil|coil_(swap|resistance|connector|scope)|spark|distributor|plug_well|"
       "ignition_module",
       {}},
      {"xenon_high_voltage", {kP, kR}, "headlamp", {}},
      {"piezo_injector_voltage", {kP, kK}, "^injector$|injector_(resistance|swap)", {}},
      {"parking_brake_service_mode",
       {kS, kK, kP, kR},
       "parking_brake|caliper_off|brake_disc_off",
       {}},
      {"unsafe_to_drive",
       {kS},
       "brake_(pedal|fluid|lamp|grind|smell)|brakes_|steering_(play|wander|judder)|heavy_steering|"
       "wheel_hot|parking_brake_weak|tyre_loses|rear_end_steers|knock_from_suspension",
       {}},
      {"do_not_crank",
       {kS},
       "rattle_cold_start|coolant_in_oil|oil_in_coolant|engine_knock|no_crank|^no_start",
       {}},
      {"single_use_bolts",
       {kP},
       "timing_chain|timing_belt|head_gasket|cylinder_head|dual_mass|wheel_hub|drive_shaft|"
       "subframe$|crankshaft_pulley",
       {}},
      {"road_test_passenger_records",
       {kK, kS},
       "boost_log|lock_up_slip|lack_of_power|hesitation|vibration_at_speed|shudder",
       {}},
      {"measure_supply_under_load", {kK}, "supply|feed_voltage|volt_drop|earth_drop", {}}};
  return all;
}

bool holds(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

TEST(VocabularyCautions, NothingThatCanHurtLacksItsWarning) {
  for (const Rule& rule : rules()) {
    const std::regex about(rule.about);
    std::size_t met = 0;
    for (const EntryKind kind : rule.kinds) {
      for (const auto& [id, entry] : built_in_vocabulary().entries(kind)) {
        const bool looks_alike =
            std::find(rule.not_of.begin(), rule.not_of.end(), id) != rule.not_of.end();
        if (looks_alike || !std::regex_search(id, about)) continue;
        ++met;
        EXPECT_TRUE(holds(entry.cautions, rule.caution))
            << name_of(kind) << " " << id << " lacks " << rule.caution;
      }
    }
    EXPECT_GT(met, 0U) << rule.caution << ": a rule that meets nothing proves nothing";
  }
}

// What each warning must say, in words that cannot be left out.
TEST(VocabularyCautions, EachWarningSaysWhatItMust) {
  const std::vector<std::pair<const char*, std::vector<const char*>>> table{
      {"jack_is_no_support", {"jack", "stands", "finger"}},
      {"lift_balance", {"lift", "weight"}},
      {"hot_coolant", {"cool", "cap"}},
      {"hot_exhaust", {"hot", "cold"}},
      {"filter_regeneration_heat", {"regeneration", "exhaust"}},
      {"exhaust_fumes_indoors", {"indoors", "arbon monoxide"}},
      {"self_starting_fans", {"fan", "stop-start"}},
      {"injection_injury", {"skin", "hospital"}},
      {"petrol_vapour", {"apour", "spark"}},
      {"refrigerant", {"efrigerant", "eyes"}},
      {"air_suspension_pressure", {"pressure", "sink"}},
      {"accumulator_pressure", {"pressure"}},
      {"springs", {"spring"}},
      {"airbag_igniter", {"ever measure", "igniter"}},
      {"high_voltage", {"voltage", "ualified"}},
      {"ignition_high_voltage", {"volt"}},
      {"xenon_high_voltage", {"volt"}},
      {"piezo_injector_voltage", {"volt"}},
      {"parking_brake_service_mode", {"service"}},
      {"unsafe_to_drive", {"hand", "brake"}},
      {"do_not_crank", {"crank", "lock", "belt"}},
      {"single_use_bolts", {"bolt", "new"}},
      {"road_test_passenger_records", {"passenger", "driver"}},
      {"measure_supply_under_load", {"load"}}};
  for (const auto& [id, words] : table) {
    const Entry* caution = built_in_vocabulary().find(EntryKind::kCaution, id);
    ASSERT_NE(caution, nullptr) << id;
    const std::string text = caution->name + " " + caution->how;
    for (const char* word : words) EXPECT_NE(text.find(word), text.npos) << id << ": " << word;
  }
  for (const auto& [id, caution] : built_in_vocabulary().entries(EntryKind::kCaution)) {
    EXPECT_NE(caution.how.find("maker's procedure"), std::string::npos) << id;
    EXPECT_NE(caution.how.find("local rules"), std::string::npos) << id;
  }
}

// The size that a workshop of all systems needs.
TEST(VocabularyCautions, TheVocabularyIsAsWideAsItMustBe) {
  const std::vector<std::pair<EntryKind, std::size_t>> table{
      {EntryKind::kSymptom, 180},   {EntryKind::kCondition, 25}, {EntryKind::kCheck, 140},
      {EntryKind::kComponent, 280}, {EntryKind::kFailure, 25},   {EntryKind::kAction, 14},
      {EntryKind::kRemoval, 45},    {EntryKind::kWorkSign, 30},  {EntryKind::kVerification, 20},
      {EntryKind::kCaution, 40}};
  for (const auto& [kind, least] : table) {
    EXPECT_GE(built_in_vocabulary().entries(kind).size(), least) << name_of(kind);
  }
  for (const auto& [id, check] : built_in_vocabulary().entries(EntryKind::kCheck)) {
    EXPECT_TRUE(check.minutes) << id;
    EXPECT_FALSE(check.how.empty()) << id;
    EXPECT_FALSE(check.source.empty()) << id;
  }
  for (const auto& [id, removal] : built_in_vocabulary().entries(EntryKind::kRemoval)) {
    EXPECT_TRUE(removal.minutes) << id;
  }
}

}  // namespace
}  // namespace shoplore
