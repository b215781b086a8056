// Engine families of the five invented makes, and what the counter asks about when.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {

std::vector<EngineFamily> demo_families() {
  constexpr auto kManual = Transmission::kManual;
  constexpr auto kAutomatic = Transmission::kAutomatic;
  return {{"AL12P", "Arlune", Fuel::kPetrol, kManual, 2010, {"Skerry"}},
          {"AL16P", "Arlune", Fuel::kPetrol, kManual, 2006, {"Skerry"}},
          {"AL15D", "Arlune", Fuel::kDiesel, kManual, 2009, {"Skerry", "Fulmar"}},
          {"AL20D", "Arlune", Fuel::kDiesel, kManual, 2007, {"Fulmar"}},
          {"ALE60", "Arlune", Fuel::kElectric, kAutomatic, 2019, {"Dray"}},
          {"BW16D", "Brackwater", Fuel::kDiesel, kManual, 2010, {"Tidal", "Estuary"}},
          {"BW14P", "Brackwater", Fuel::kPetrol, kManual, 2008, {"Tidal"}},
          {"BW20D", "Brackwater", Fuel::kDiesel, kAutomatic, 2008, {"Estuary", "Harbour"}},
          {"CM12P", "Cormont", Fuel::kPetrol, kManual, 2009, {"Cairn"}},
          {"CM14P", "Cormont", Fuel::kPetrol, kManual, 2007, {"Cairn", "Ridge"}},
          {"CM16P", "Cormont", Fuel::kPetrol, kAutomatic, 2008, {"Ridge", "Fell"}},
          {"CM18D", "Cormont", Fuel::kDiesel, kManual, 2009, {"Fell"}},
          {"DM25D", "Dunmarrow", Fuel::kDiesel, kManual, 2004, {"Drover", "Croft"}},
          {"DM22D", "Dunmarrow", Fuel::kDiesel, kManual, 2011, {"Croft"}},
          {"DM13D", "Dunmarrow", Fuel::kDiesel, kManual, 2009, {"Byre"}},
          {"EL20D", "Elvetia", Fuel::kDiesel, kAutomatic, 2007, {"Alpage"}},
          {"EL16P", "Elvetia", Fuel::kPetrol, kManual, 2008, {"Alpage"}},
          {"EL18H", "Elvetia", Fuel::kHybrid, kAutomatic, 2012, {"Serac"}},
          {"EL10P", "Elvetia", Fuel::kPetrol, kManual, 2011, {"Col"}}};
}

// The booking card asks everyone the first nine; the rest comes up where it belongs.
std::vector<SymptomHabit> demo_symptom_habits() {
  using enum Group;
  return {{"lack_of_power", 0.03, {kBoost, kMisfire, kGearbox}, 0.80, 0.45},
          {"misfire", 0.01, {kMisfire, kGearbox}, 0.80, 0.40},
          {"engine_lamp_on", 0.06, {kBoost, kMisfire, kGearbox}, 0.85, 0.55},
          {"hard_start", 0.02, {kMisfire, kElectrics}, 0.75, 0.45},
          {"lumpy_idle", 0.03, {kBoost, kMisfire}, 0.70, 0.35},
          {"battery_flat_overnight", 0.01, {kElectrics}, 0.85, 0.40},
          {"wheel_hum", 0.02, {kWheels}, 0.80, 0.40},
          {"abs_lamp_on", 0.02, {kWheels}, 0.85, 0.45},
          {"heater_cold", 0.02, {kCabin}, 0.85, 0.40},
          {"whistle_under_load", 0.01, {kBoost}, 0.75, 0.03},
          {"black_smoke", 0.01, {kBoost}, 0.70, 0.05},
          {"limp_mode", 0.02, {kBoost}, 0.75, 0.08},
          {"turbo_whine", 0.02, {kBoost}, 0.40, 0.0},
          {"blue_smoke", 0.01, {kBoost}, 0.45, 0.03},
          {"filter_lamp_on", 0.02, {kBoost}, 0.70, 0.03},
          {"frequent_regeneration", 0.02, {kBoost}, 0.45, 0.0},
          {"hesitation", 0.04, {kBoost, kMisfire, kGearbox}, 0.60, 0.08},
          {"stalls", 0.02, {kMisfire, kBoost}, 0.65, 0.10},
          {"fuel_smell", 0.01, {kMisfire}, 0.40, 0.02},
          {"refuel_trouble", 0.004, {kMisfire}, 0.25, 0.0},
          {"rattle_cold_start", 0.01, {kMisfire}, 0.55, 0.04},
          {"oil_leak", 0.02, {kMisfire}, 0.40, 0.05},
          {"oil_consumption", 0.03, {kMisfire, kBoost}, 0.45, 0.05},
          {"high_consumption", 0.04, {kMisfire, kCabin}, 0.45, 0.03},
          {"intermittent_cut_in_wet", 0.01, {kMisfire}, 0.55, 0.02},
          {"white_smoke", 0.01, {kElectrics}, 0.20, 0.02},
          {"glow_lamp_flashing", 0.01, {}, 0.0, 0.04},
          {"no_start", 0.01, {kElectrics, kMisfire}, 0.70, 0.15},
          {"slow_crank", 0.01, {kElectrics}, 0.70, 0.04},
          {"interior_lamp_stays_on", 0.01, {kElectrics}, 0.45, 0.02},
          {"door_ajar_shown", 0.01, {kElectrics}, 0.45, 0.02},
          {"locking_odd", 0.01, {kElectrics}, 0.40, 0.02},
          {"clock_resets", 0.02, {kElectrics}, 0.35, 0.0},
          {"lights_flicker", 0.01, {kElectrics}, 0.50, 0.02},
          {"electrics_odd", 0.01, {kElectrics, kMisfire}, 0.40, 0.02},
          {"charge_lamp_on", 0.005, {kElectrics}, 0.70, 0.05},
          {"belt_squeal", 0.01, {kElectrics}, 0.50, 0.03},
          {"belt_flutter", 0.01, {kElectrics}, 0.35, 0.0},
          {"abs_cuts_in_slow", 0.005, {kWheels}, 0.70, 0.03},
          {"stability_lamp_on", 0.02, {kWheels}, 0.75, 0.06},
          {"hum_changes_in_bends", 0.01, {kWheels}, 0.55, 0.0},
          {"vibration_at_speed", 0.03, {kWheels}, 0.55, 0.05},
          {"pulls_to_one_side", 0.02, {kWheels}, 0.45, 0.04},
          {"steering_wheel_off_centre", 0.02, {kWheels}, 0.45, 0.02},
          {"assist_cuts_in_bend", 0.005, {kWheels}, 0.35, 0.0},
          {"brake_noise", 0.03, {kWheels}, 0.35, 0.03},
          {"shudder_on_light_throttle", 0.01, {kGearbox, kMisfire}, 0.45, 0.03},
          {"harsh_shift", 0.01, {kGearbox}, 0.60, 0.02},
          {"slipping_gearbox", 0.005, {kGearbox}, 0.60, 0.02},
          {"slow_warm_up", 0.01, {kCabin}, 0.70, 0.03},
          {"heater_one_side", 0.01, {kCabin}, 0.60, 0.0},
          {"dash_clicking", 0.01, {kCabin}, 0.50, 0.0},
          {"air_con_warm", 0.02, {kCabin}, 0.25, 0.02},
          {"fan_runs_constantly", 0.01, {kCabin, kBoost}, 0.20, 0.0},
          {"water_inside", 0.01, {}, 0.0, 0.02}};
}

}  // namespace shoplore::demo
