// Wheels, brakes and steering, gearbox, heat: noises that sound alike and lamps that share codes.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {
namespace {

constexpr FixName kNewSpeedSensor{"replace", "wheel_speed_sensor"};
constexpr FixName kNewBearing{"replace", "wheel_bearing"};
constexpr FixName kNewTyres{"replace", "tyre"};
constexpr FixName kNewThermostat{"replace", "thermostat"};

Pattern tone_ring() {
  return {
      .id = "abs_tone_ring_corroded",
      .component = "abs_tone_ring",
      .failure = "corroded",
      .group = Group::kWheels,
      .share = 62,
      .scanned = 0.80,
      .symptoms = {{"abs_cuts_in_slow", 0.80}, {"abs_lamp_on", 0.52}, {"stability_lamp_on", 0.30},
                   {"wheel_hum", 0.06}, {"brake_noise", 0.12}},
      .codes = {{"C0035", 0.30}, {"C0040", 0.30}, {"C0045", 0.18}, {"C0050", 0.18}},
      .conditions = {{"walking_pace", 0.50}, {"braking", 0.40}, {"wet", 0.12}},
      .checks = {{"wheel_speed_live", 0.55, 0.88}, {"tone_ring_look", 0.50, 0.85},
                 {"wheel_spin_listen", 0.20, 0.08}, {"bearing_play", 0.22, 0.06}},
      .earlier = {{kNewSpeedSensor, 0.42}, {kNewBearing, 0.04}},
      .signs = {{"new_part_fitted", 0.26}, {"tool_marks", 0.10}},
      .families = {{"AL12P", 0.12}, {"AL15D", 0.16}, {"BW14P", 0.12}, {"DM25D", 0.20},
                   {"DM13D", 0.14}, {"CM12P", 0.14}, {"ALE60", 0.02}, {"EL10P", 0.10}},
      .mileage = {0.02, 0.18, 0.32, 0.27, 0.14, 0.07},
      .plans = {{{{"replace", "abs_tone_ring"}}, 0.72, 0.04, ComebackReason::kPart, 2, 34},
                {{{"replace", "drive_shaft"}}, 0.14, 0.02, ComebackReason::kPart, 2.2, 160},
                {{{"clean", "abs_tone_ring"}}, 0.14, 0.50, ComebackReason::kSameCause, 1, 0}},
      .removals = {"wheel"},
      .found = {"tone ring swollen with rust and cracked", "rust ridges on the ring, signal drops out"}};
}

Pattern wheel_bearing() {
  return {
      .id = "wheel_bearing_worn",
      .component = "wheel_bearing",
      .failure = "worn",
      .group = Group::kWheels,
      .share = 64,
      .scanned = 0.32,
      .symptoms = {{"wheel_hum", 0.92}, {"hum_changes_in_bends", 0.62}, {"vibration_at_speed", 0.22},
                   {"abs_lamp_on", 0.18}, {"abs_cuts_in_slow", 0.10}},
      .codes = {{"C0035", 0.14}, {"C0040", 0.14}, {"C0045", 0.12}, {"C0050", 0.12}},
      .conditions = {{"motorway", 0.45}, {"in_bends", 0.42}},
      .checks = {{"wheel_spin_listen", 0.56, 0.84}, {"bearing_play", 0.50, 0.55},
                 {"tyre_look", 0.34, 0.16}, {"wheel_speed_live", 0.14, 0.28},
                 {"tone_ring_look", 0.08, 0.08}},
      .earlier = {{kNewTyres, 0.18}, {kNewBearing, 0.08}},
      .signs = {{"tool_marks", 0.08}},
      .families = {{"AL15D", 0.14}, {"AL20D", 0.14}, {"ALE60", 0.08}, {"BW20D", 0.16},
                   {"BW16D", 0.12}, {"CM18D", 0.10}, {"EL18H", 0.14}, {"DM13D", 0.12}},
      .mileage = {0.03, 0.18, 0.30, 0.26, 0.15, 0.08},
      .plans = {{{kNewBearing}, 0.84, 0.05, ComebackReason::kWorkmanship, 1.8, 88},
                {{kNewBearing, {"replace", "wheel_hub"}}, 0.16, 0.02, ComebackReason::kPart, 2.2,
                 150}},
      .removals = {"wheel", "brake_disc_off"},
      .found = {"bearing rough by hand, felt at the spring", "bearing growls, play at twelve and six"}};
}

Pattern tyre_wear() {
  return {
      .id = "tyre_worn",
      .component = "tyre",
      .failure = "worn",
      .group = Group::kWheels,
      .share = 26,
      .scanned = 0.12,
      .symptoms = {{"wheel_hum", 0.88}, {"vibration_at_speed", 0.46}, {"hum_changes_in_bends", 0.10},
                   {"pulls_to_one_side", 0.26}, {"steering_wheel_off_centre", 0.12}},
      .codes = {},
      .conditions = {{"motorway", 0.40}, {"in_bends", 0.06}, {"after_alignment", 0.04}},
      .checks = {{"tyre_look", 0.58, 0.90}, {"wheel_spin_listen", 0.42, 0.10},
                 {"bearing_play", 0.34, 0.05}, {"alignment_measured", 0.28, 0.62}},
      .earlier = {{kNewBearing, 0.24}, {kNewTyres, 0.03}},
      .signs = {{"wheel_alignment_marks", 0.06}},
      .families = {{"AL15D", 0.16}, {"AL20D", 0.14}, {"BW20D", 0.18}, {"BW16D", 0.12},
                   {"EL18H", 0.16}, {"CM18D", 0.10}, {"DM25D", 0.14}},
      .mileage = {0.10, 0.26, 0.28, 0.20, 0.11, 0.05},
      .plans = {{{kNewTyres}, 0.55, 0.08, ComebackReason::kSameCause, 0.8, 180},
                {{kNewTyres, {"align", "track_rod_end"}}, 0.45, 0.02, ComebackReason::kWorkmanship,
                 1.6, 200}},
      .removals = {"wheel"},
      .found = {"sawtooth wear on the rear tyres, hum gone with axles swapped",
                "tyres worn in steps, bearing quiet by hand"}};
}

Pattern steering_angle() {
  return {
      .id = "steering_angle_not_calibrated",
      .component = "steering_angle_sensor",
      .failure = "not_calibrated",
      .group = Group::kWheels,
      .share = 36,
      .scanned = 0.90,
      .symptoms = {{"stability_lamp_on", 0.88}, {"assist_cuts_in_bend", 0.40},
                   {"steering_wheel_off_centre", 0.32}, {"abs_lamp_on", 0.22},
                   {"pulls_to_one_side", 0.14}},
      .codes = {{"C1210", 0.60}, {"C0051", 0.48}},
      .conditions = {{"after_alignment", 0.64}, {"after_tyres", 0.20}, {"in_bends", 0.22}},
      .checks = {{"steering_angle_live", 0.62, 0.90}, {"alignment_measured", 0.26, 0.24},
                 {"wheel_speed_live", 0.24, 0.06}, {"tyre_look", 0.10, 0.15}},
      .earlier = {{{"align", "track_rod_end"}, 0.56}, {kNewSpeedSensor, 0.08}},
      .signs = {{"wheel_alignment_marks", 0.55}, {"battery_disconnected_lately", 0.12}},
      .families = {{"CM16P", 0.12}, {"CM18D", 0.16}, {"BW16D", 0.14}, {"EL18H", 0.16},
                   {"EL20D", 0.16}, {"AL16P", 0.12}, {"BW20D", 0.14}},
      .mileage = {0.12, 0.28, 0.28, 0.18, 0.10, 0.04},
      .plans = {{{{"calibrate", "steering_angle_sensor"}}, 0.90, 0.04, ComebackReason::kWorkmanship,
                 0.5, 0},
                {{{"replace", "steering_angle_sensor"}, {"calibrate", "steering_angle_sensor"}},
                 0.10, 0.03, ComebackReason::kPart, 1.4, 140}},
      .removals = {},
      .found = {"angle shows nine degrees wheels straight, never zeroed after tracking",
                "zero point lost at the last alignment"}};
}

Pattern converter_shudder() {
  return {
      .id = "gearbox_fluid_degraded",
      .component = "gearbox_fluid",
      .failure = "degraded",
      .group = Group::kGearbox,
      .share = 36,
      .scanned = 0.80,
      .symptoms = {{"shudder_on_light_throttle", 0.90}, {"harsh_shift", 0.36},
                   {"slipping_gearbox", 0.20}, {"hesitation", 0.25}, {"misfire", 0.06}},
      .codes = {{"P0741", 0.46}, {"P0700", 0.34}},
      .conditions = {{"light_throttle", 0.60}, {"hot", 0.25}, {"uphill", 0.14}},
      .checks = {{"lock_up_slip_live", 0.50, 0.86}, {"gearbox_fluid_look", 0.55, 0.80},
                 {"misfire_counter", 0.20, 0.05}},
      .earlier = {{{"replace", "spark_plug"}, 0.14}, {{"reprogram", "control_unit"}, 0.12}},
      .signs = {{"codes_recently_cleared", 0.08}},
      .families = {{"EL18H", 0.16}, {"EL20D", 0.32}, {"BW20D", 0.36}, {"CM16P", 0.16}},
      .mileage = {0.01, 0.16, 0.34, 0.28, 0.14, 0.07},
      .plans = {{{{"change_fluid", "gearbox_fluid"}}, 0.84, 0.12, ComebackReason::kSameCause, 2,
                 130},
                {{{"replace", "torque_converter"}, {"change_fluid", "gearbox_fluid"}}, 0.16, 0.03,
                 ComebackReason::kPart, 8, 640}},
      .removals = {"undertray", "gearbox_pan"},
      .found = {"fluid dark and burnt, shudder gone after two changes",
                "slip swings while it shudders, fluid never changed"}};
}

Pattern blend_gear() {
  return {
      .id = "blend_door_gear_broken",
      .component = "blend_door_gear",
      .failure = "broken",
      .group = Group::kCabin,
      .share = 32,
      .scanned = 0.50,
      .symptoms = {{"heater_cold", 0.60}, {"dash_clicking", 0.72}, {"heater_one_side", 0.52},
                   {"slow_warm_up", 0.05}, {"air_con_warm", 0.15}},
      .codes = {{"B1262", 0.56}},
      .conditions = {{"key_on", 0.12}, {"frost", 0.12}},
      .checks = {{"flap_motor_test", 0.52, 0.88}, {"blend_gear_look", 0.36, 0.86},
                 {"thermostat_warm_up", 0.20, 0.06}, {"radiator_hose_feel", 0.20, 0.08}},
      .earlier = {{kNewThermostat, 0.18}, {{"replace", "blend_door_motor"}, 0.16}},
      .signs = {{"fastener_missing", 0.10}},
      .families = {{"CM14P", 0.14}, {"CM16P", 0.20}, {"CM18D", 0.16}, {"BW16D", 0.12},
                   {"AL16P", 0.16}, {"EL16P", 0.12}, {"EL20D", 0.10}},
      .mileage = {0.08, 0.26, 0.30, 0.20, 0.11, 0.05},
      .plans = {{{{"replace", "blend_door_gear"}}, 0.80, 0.05, ComebackReason::kWorkmanship, 2.6,
                 30},
                {{{"replace", "blend_door_motor"}}, 0.20, 0.45, ComebackReason::kSameCause, 1.8,
                 85}},
      .removals = {"glovebox", "dash_panel"},
      .found = {"gear of the blend door has lost its teeth", "flap shaft gear split, motor turns free"}};
}

Pattern thermostat_open() {
  return {
      .id = "thermostat_stuck_open",
      .component = "thermostat",
      .failure = "stuck_open",
      .group = Group::kCabin,
      .share = 54,
      .scanned = 0.80,
      .symptoms = {{"slow_warm_up", 0.82}, {"heater_cold", 0.66}, {"high_consumption", 0.36},
                   {"engine_lamp_on", 0.60}, {"frequent_regeneration", 0.08},
                   {"fan_runs_constantly", 0.03}},
      .codes = {{"P0128", 0.74}},
      .conditions = {{"motorway", 0.28}, {"frost", 0.26}, {"short_trips", 0.18}},
      .checks = {{"thermostat_warm_up", 0.50, 0.90}, {"radiator_hose_feel", 0.46, 0.84},
                 {"flap_motor_test", 0.12, 0.06}},
      .earlier = {{{"replace", "coolant_temperature_sensor"}, 0.26}, {kNewThermostat, 0.06}},
      .signs = {{"sealant_in_excess", 0.10}, {"new_part_fitted", 0.14}},
      .families = {{"AL15D", 0.14}, {"AL20D", 0.10}, {"BW16D", 0.14}, {"BW14P", 0.12},
                   {"CM14P", 0.10}, {"CM18D", 0.12}, {"DM22D", 0.12}, {"EL20D", 0.16}},
      .mileage = {0.05, 0.24, 0.30, 0.22, 0.13, 0.06},
      .plans = {{{kNewThermostat}, 0.86, 0.04, ComebackReason::kPart, 1.2, 38},
                {{kNewThermostat, {"replace", "coolant_temperature_sensor"}}, 0.14, 0.03,
                 ComebackReason::kPart, 1.5, 62}},
      .removals = {"intake_pipe", "coolant_drained"},
      .found = {"thermostat hangs open, lower hose warm after two minutes",
                "never passes seventy degrees on the road, stat open"}};
}

}  // namespace

std::vector<Pattern> running_gear_patterns() {
  return {tone_ring(),         wheel_bearing(), tyre_wear(),      steering_angle(),
          converter_shudder(), blend_gear(),    thermostat_open()};
}

}  // namespace shoplore::demo
