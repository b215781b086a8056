// Engine families of the five invented makes, and what the counter asks about when.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {

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
  using enum ComplaintGroup;
  return {{"lack_of_power", 0.006, {kPower, kRunning, kGearbox}, 0.98, 0.5},
          {"misfire", 0.002, {kRunning, kGearbox}, 0.98, 0.45},
          {"engine_lamp_on", 0.012, {kPower, kRunning}, 0.98, 0.45},
          {"hard_start", 0.004, {kRunning, kElectrics}, 0.98, 0.45},
          {"lumpy_idle", 0.006, {kPower, kRunning}, 0.98, 0.3},
          {"battery_flat_overnight", 0.002, {kElectrics}, 0.98, 0.45},
          {"wheel_hum", 0.004, {kWheels}, 0.98, 0.45},
          {"abs_lamp_on", 0.004, {kWheels}, 0.98, 0.45},
          {"heater_cold", 0.004, {kCabin}, 0.98, 0.45},
          {"whistle_under_load", 0.002, {kPower}, 0.75, 0.03},
          {"black_smoke", 0.002, {kPower}, 0.60, 0.02},
          {"limp_mode", 0.004, {kPower}, 0.75, 0.15},
          {"turbo_whine", 0.004, {kPower}, 0.30, 0.0},
          {"blue_smoke", 0.002, {kPower}, 0.30, 0.0},
          {"filter_lamp_on", 0.004, {kPower}, 0.98, 0.2},
          {"frequent_regeneration", 0.004, {kPower}, 0.40, 0.0},
          {"hesitation", 0.008, {kRunning, kGearbox}, 0.45, 0.03},
          {"stalls", 0.004, {kRunning}, 0.98, 0.2},
          {"fuel_smell", 0.002, {kRunning}, 0.45, 0.02},
          {"refuel_trouble", 0.001, {kRunning}, 0.25, 0.0},
          {"rattle_cold_start", 0.002, {kRunning}, 0.98, 0.2},
          {"oil_leak", 0.004, {kRunning}, 0.35, 0.02},
          {"oil_consumption", 0.006, {kPower, kRunning}, 0.25, 0.0},
          {"intermittent_cut_in_wet", 0.002, {kRunning}, 0.98, 0.2},
          {"white_smoke", 0.002, {kElectrics}, 0.25, 0.0},
          {"glow_lamp_flashing", 0.002, {kElectrics}, 0.98, 0.1},
          {"no_start", 0.002, {kElectrics}, 0.8, 0.2},
          {"slow_crank", 0.002, {kElectrics}, 0.98, 0.3},
          {"interior_lamp_stays_on", 0.002, {kElectrics}, 0.40, 0.0},
          {"door_ajar_shown", 0.002, {kElectrics}, 0.35, 0.0},
          {"locking_odd", 0.002, {kElectrics}, 0.35, 0.0},
          {"clock_resets", 0.004, {kElectrics}, 0.25, 0.0},
          {"lights_flicker", 0.002, {kElectrics}, 0.45, 0.0},
          {"electrics_odd", 0.002, {kElectrics, kRunning}, 0.35, 0.0},
          {"charge_lamp_on", 0.001, {kElectrics}, 0.98, 0.3},
          {"belt_squeal", 0.002, {kElectrics}, 0.98, 0.2},
          {"belt_flutter", 0.002, {kElectrics}, 0.55, 0.0},
          {"abs_cuts_in_slow", 0.001, {kWheels}, 0.98, 0.25},
          {"stability_lamp_on", 0.004, {kWheels}, 0.98, 0.25},
          {"hum_changes_in_bends", 0.002, {kWheels}, 0.55, 0.0},
          {"vibration_at_speed", 0.006, {kWheels}, 0.55, 0.1},
          {"pulls_to_one_side", 0.004, {kWheels}, 0.40, 0.0},
          {"steering_wheel_off_centre", 0.004, {kWheels}, 0.40, 0.0},
          {"assist_cuts_in_bend", 0.001, {kWheels}, 0.35, 0.0},
          {"shudder_on_light_throttle", 0.002, {kGearbox}, 0.98, 0.2},
          {"harsh_shift", 0.002, {kGearbox}, 0.60, 0.0},
          {"slipping_gearbox", 0.001, {kGearbox}, 0.50, 0.0},
          {"slow_warm_up", 0.002, {kCabin}, 0.98, 0.25},
          {"heater_one_side", 0.002, {kCabin}, 0.50, 0.0},
          {"dash_clicking", 0.002, {kCabin}, 0.98, 0.15}};
}

std::vector<CheckHabit> demo_check_habits() {
  using enum ComplaintGroup;
  return {{"wastegate_linkage_by_hand", {{kPower, 0.28}}},
          {"boost_log", {{kPower, 0.27}}},
          {"boost_hose_look", {{kPower, 0.29}}},
          {"smoke_test", {{kPower, 0.13}}},
          {"vane_sweep_test", {{kPower, 0.17}}},
          {"turbo_shaft_play", {{kPower, 0.14}}},
          {"actuator_vacuum_test", {{kPower, 0.13}}},
          {"egr_flow_test", {{kPower, 0.08}}},
          {"egr_passage_look", {{kPower, 0.07}}},
          {"filter_pressure_idle", {{kPower, 0.08}}},
          {"filter_hose_look", {{kPower, 0.07}}},
          {"plug_well_look", {{kRunning, 0.44}}},
          {"coil_swap", {{kRunning, 0.28}}},
          {"coil_resistance", {{kRunning, 0.12}}},
          {"spark_plug_look", {{kRunning, 0.24}}},
          {"misfire_counter", {{kRunning, 0.28}, {kGearbox, 0.15}}},
          {"compression_test", {{kRunning, 0.11}}},
          {"purge_valve_blow", {{kRunning, 0.10}}},
          {"fuel_trim_look", {{kRunning, 0.17}}},
          {"cam_timing_live", {{kRunning, 0.10}}},
          {"chain_listen", {{kRunning, 0.09}}},
          {"connector_open_look", {{kRunning, 0.17}}},
          {"wiggle_test", {{kRunning, 0.10}, {kElectrics, 0.06}}},
          {"quiescent_current", {{kElectrics, 0.24}}},
          {"door_switch_live", {{kElectrics, 0.14}}},
          {"battery_load_test", {{kElectrics, 0.41}}},
          {"charging_voltage", {{kElectrics, 0.38}}},
          {"earth_volt_drop", {{kElectrics, 0.23}}},
          {"starter_current", {{kElectrics, 0.14}}},
          {"glow_current", {{kElectrics, 0.11}}},
          {"glow_supply", {{kElectrics, 0.10}}},
          {"glow_plug_resistance", {{kElectrics, 0.10}}},
          {"pulley_freewheel", {{kElectrics, 0.10}}},
          {"belt_tensioner_watch", {{kElectrics, 0.10}}},
          {"wheel_speed_live", {{kWheels, 0.26}}},
          {"tone_ring_look", {{kWheels, 0.23}}},
          {"steering_angle_live", {{kWheels, 0.19}}},
          {"wheel_spin_listen", {{kWheels, 0.28}}},
          {"bearing_play", {{kWheels, 0.23}}},
          {"tyre_look", {{kWheels, 0.21}}},
          {"alignment_measured", {{kWheels, 0.14}}},
          {"lock_up_slip_live", {{kGearbox, 0.50}}},
          {"gearbox_fluid_look", {{kGearbox, 0.55}}},
          {"flap_motor_test", {{kCabin, 0.30}}},
          {"blend_gear_look", {{kCabin, 0.22}}},
          {"thermostat_warm_up", {{kCabin, 0.36}}},
          {"radiator_hose_feel", {{kCabin, 0.34}}},
          {"visual_inspection", {{kPower, 0.14}, {kRunning, 0.06}, {kElectrics, 0.10}}}};
}

// Codes are read for a lamp at once, for a noise seldom.
std::vector<GroupRate> demo_scan_habits() {
  using enum ComplaintGroup;
  return {{kPower, 0.90},  {kRunning, 0.90}, {kElectrics, 0.55},
          {kWheels, 0.55}, {kGearbox, 0.80}, {kCabin, 0.65}};
}

}  // namespace shoplore
