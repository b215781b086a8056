// Heating and cooling of the cabin.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewThermostat{"replace", "thermostat"};
constexpr FixName kMoreRefrigerant{"top_up", "ac_refrigerant"};

FailurePattern blend_gear() {
  return {
      .id = "blend_door_gear_broken",
      .component = "blend_door_gear",
      .failure = "broken",
      .system = System::kClimate,
      .group = ComplaintGroup::kCabin,
      .share = 32,
      .symptoms = {{"heater_cold", 0.70},
                   {"dash_clicking", 0.997},
                   {"heater_one_side", 0.52},
                   {"air_con_warm", 0.15}},
      .codes = {{"B1262", 0.56}},
      .conditions = {},
      .checks = {{"flap_motor_test", 0.88},
                 {"blend_gear_look", 0.86},
                 {"thermostat_warm_up", 0.06},
                 {"radiator_hose_feel", 0.08}},
      .earlier = {{kNewThermostat, 0.18}, {{"replace", "blend_door_motor"}, 0.16}},
      .signs = {},
      .families = {{"CM16P", 0.30}, {"CM18D", 0.25}, {"AL16P", 0.25}, {"EL16P", 0.20}},
      .mileage = {0.07, 0.24, 0.30, 0.22, 0.12, 0.05},
      .plans =
          {{{{"replace", "blend_door_gear"}}, 0.80, 0.05, ComebackReason::kWorkmanship, 2.6, 30},
           {{{"replace", "blend_door_motor"}}, 0.20, 0.45, ComebackReason::kSameCause, 1.8, 85}},
      .removals = {"glovebox", "dash_panel"},
      .found = {"gear of the blend door has lost its teeth",
                "flap shaft gear split, motor turns free"},
      .traps = {"screw behind the gear turns free: hold it from above"},
      .verification = {"warm_up_curve"}};
}

FailurePattern condenser() {
  return {.id = "ac_condenser_leaking",
          .component = "ac_condenser",
          .failure = "leaking",
          .system = System::kClimate,
          .group = ComplaintGroup::kCabin,
          .share = 32,
          .symptoms = {{"air_con_warm", 0.997},
                       {"air_con_no_cold_at_idle", 0.28},
                       {"screen_mists_up", 0.12}},
          .codes = {{"B1262", 0.04}},
          .conditions = {{"hot_weather", 0.42}},
          .checks = {{"ac_pressures", 0.90},
                     {"ac_vent_temperature", 0.92},
                     {"ac_leak_lamp", 0.78},
                     {"ac_condenser_look", 0.62},
                     {"flap_motor_test", 0.08}},
          .earlier = {{kMoreRefrigerant, 0.52}, {{"replace", "ac_compressor"}, 0.10}},
          .signs = {{"new_part_fitted", 0.12}},
          .families = {{"AL22D", 0.20}, {"BW16D", 0.25}, {"CM16P", 0.30}, {"EL20D", 0.25}},
          .mileage = {0.07, 0.24, 0.30, 0.22, 0.12, 0.05},
          .plans = {{{{"replace", "ac_condenser"}, {"replace", "ac_drier"}},
                     0.78,
                     0.04,
                     ComebackReason::kWorkmanship,
                     2.6,
                     210},
                    {{kMoreRefrigerant}, 0.22, 0.85, ComebackReason::kSameCause, 0.8, 45}},
          .removals = {"refrigerant_recovered", "bumper", "grille"},
          .found = {"dye all over the lower corner of the condenser, fins eaten by salt",
                    "stone hole in the condenser, pressure nil",
                    "fins fall out at a touch, leaks along the bottom tube"},
          .season = kHeat,
          .facts = {kept_by_the_sea()},
          .traps = {"filling without finding the leak only sells gas twice"},
          .verification = {"ac_vent_rechecked"}};
}

FailurePattern blower_resistor() {
  return {
      .id = "blower_resistor_burnt",
      .component = "blower_resistor",
      .failure = "burnt",
      .system = System::kClimate,
      .group = ComplaintGroup::kCabin,
      .share = 24,
      .symptoms = {{"blower_one_speed", 0.997},
                   {"blower_dead", 0.22},
                   {"heater_cold", 0.25},
                   {"burning_smell_electrical", 0.15},
                   {"air_con_warm", 0.15}},
      .codes = {{"B1262", 0.04}},
      .conditions = {{"heater_on", 0.30}},
      .checks = {{"blower_current", 0.52},
                 {"cabin_filter_look", 0.45},
                 {"flap_motor_test", 0.06},
                 {"thermostat_warm_up", 0.05}},
      .earlier = {{{"replace", "blower_motor"}, 0.30}, {{"replace", "fuse"}, 0.16}},
      .signs = {{"new_part_fitted", 0.16}},
      .families = {{"BW10P", 0.30}, {"CM12P", 0.25}, {"AL10P", 0.25}, {"EL10P", 0.20}},
      .mileage = {0.07, 0.24, 0.30, 0.22, 0.12, 0.05},
      .plans = {{{{"replace", "blower_resistor"}}, 0.62, 0.14, ComebackReason::kSameCause, 0.7, 32},
                {{{"replace", "blower_resistor"}, {"replace", "cabin_filter"}},
                 0.26,
                 0.03,
                 ComebackReason::kPart,
                 0.8,
                 48},
                {{{"replace", "blower_motor"}}, 0.12, 0.60, ComebackReason::kWrongCause, 1.2, 95}},
      .removals = {"glovebox"},
      .found = {"only full speed left, resistor burnt through",
                "plug of the resistor brown, motor draws too much through a choked filter",
                "coil of the resistor open, leaves on it"},
      .season = kFrost,
      .traps = {"look at the pollen filter first: a choked one kills the next resistor too"},
      .verification = {},
      .contributing = {{"cabin_filter", "blocked"}}};
}

}  // namespace

std::vector<FailurePattern> climate_patterns() {
  return {blend_gear(), condenser(), blower_resistor()};
}

}  // namespace shoplore
