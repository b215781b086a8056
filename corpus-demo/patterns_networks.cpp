// Wires, connectors and what they carry: faults that look like any other system's.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewCoil{"replace", "ignition_coil"};

FailurePattern water_in_connector() {
  return {
      .id = "wiring_connector_water",
      .component = "wiring_connector",
      .failure = "water_entry",
      .system = System::kNetworks,
      .group = ComplaintGroup::kRunning,
      .share = 46,
      .symptoms = {{"misfire", 0.55},
                   {"stalls", 0.42},
                   {"engine_lamp_on", 0.78},
                   {"intermittent_cut_in_wet", 0.997},
                   {"lack_of_power", 0.30},
                   {"electrics_odd", 0.30},
                   {"hesitation", 0.32},
                   {"no_start", 0.20},
                   {"water_inside", 0.08}},
      .codes = {{"P0201", 0.26},
                {"P0202", 0.22},
                {"P0300", 0.14},
                {"P0351", 0.16},
                {"P0340", 0.20},
                {"U0100", 0.16},
                {"P0335", 0.12}},
      .conditions = {{"wet", 0.66}},
      .checks = {{"connector_open_look", 0.88},
                 {"wiggle_test", 0.68},
                 {"coil_swap", 0.08},
                 {"plug_well_look", 0.06},
                 {"misfire_counter", 0.60},
                 {"coil_resistance", 0.08},
                 {"visual_inspection", 0.30}},
      .earlier = {{kNewCoil, 0.14},
                  {{"replace", "camshaft_sensor"}, 0.10},
                  {{"replace", "injector"}, 0.10}},
      .signs = {{"connector_unlatched", 0.26}, {"tape_repair", 0.14}, {"snap_splice", 0.12}},
      .families =
          {{"BW14P", 0.22}, {"AL12P", 0.22}, {"CM12P", 0.20}, {"EL10P", 0.20}, {"BW12P", 0.16}},
      .mileage = {0.05, 0.22, 0.32, 0.25, 0.11, 0.05},
      .plans =
          {{{{"dry_and_protect", "wiring_connector"}},
            0.45,
            0.22,
            ComebackReason::kSameCause,
            0.8,
            6},
           {{{"replace", "wiring_connector"}}, 0.42, 0.04, ComebackReason::kWorkmanship, 1.5, 32},
           {{{"repair", "wiring_harness"}, {"seal", "wiring_connector"}},
            0.13,
            0.06,
            ComebackReason::kWorkmanship,
            2.4,
            25}},
      .removals = {"battery_tray"},
      .found = {"water in the connector, pins green", "connector full of water, seal missing",
                "salt crust on two pins, drops with a wiggle"},
      .season = kRain,
      .facts = {kept_by_the_sea()},
      .traps = {"blow out both halves, water sits under the rubber",
                "grease in the pins hides the next fault"},
      .verification = {"wet_test"},
      .contributing = {{"scuttle_drain", "blocked"}}};
}

FailurePattern network_wire() {
  return {
      .id = "network_wire_chafed",
      .component = "network_wire",
      .failure = "chafed",
      .system = System::kNetworks,
      .group = ComplaintGroup::kElectrics,
      .share = 30,
      .symptoms = {{"several_modules_silent", 0.997},
                   {"network_lamps_flicker", 0.72},
                   {"electrics_odd", 0.55},
                   {"no_start", 0.36},
                   {"abs_lamp_on", 0.25},
                   {"stability_lamp_on", 0.20},
                   {"lights_flicker", 0.20}},
      .codes = {{"U0100", 0.58}, {"U0121", 0.46}, {"U0073", 0.42}, {"P0562", 0.06}},
      .conditions = {{"over_bumps", 0.30}, {"wet", 0.24}},
      .checks = {{"module_scan", 0.86},
                 {"network_resistance", 0.60},
                 {"network_voltage", 0.66},
                 {"wiggle_test", 0.66},
                 {"earth_volt_drop", 0.10},
                 {"battery_load_test", 0.12},
                 {"charging_voltage", 0.05}},
      .earlier = {{{"replace", "control_unit"}, 0.22}, {{"replace", "battery"}, 0.24}},
      .signs = {{"wire_pinched", 0.34},
                {"snap_splice", 0.14},
                {"battery_disconnected_lately", 0.18}},
      .families = {{"EL18H", 0.20}, {"EL22D", 0.25}, {"BW24D", 0.25}, {"CM16P", 0.30}},
      .mileage = weibull_bands(1.2, 170),
      .plans = {{{{"repair", "network_wire"}}, 0.78, 0.08, ComebackReason::kWorkmanship, 2.6, 6},
                {{{"rewire", "network_wire"}}, 0.16, 0.02, ComebackReason::kWorkmanship, 4.0, 20},
                {{{"replace", "control_unit"}}, 0.06, 0.95, ComebackReason::kWrongCause, 1.5, 480}},
      .removals = {"battery_tray"},
      .found = {"pair rubbed through on the bracket behind the battery, shorts when it moves",
                "sixty ohms at rest, nothing over bumps: wire chafed at the bulkhead",
                "green pair bare where an old clip cut it"},
      .season = kRain,
      .facts = {kept_by_the_sea()},
      .traps = {"battery off before measuring the pair's resistance", "twist the repair as it was"},
      .verification = {"scan_no_codes"}};
}

}  // namespace

std::vector<FailurePattern> network_patterns() {
  return {water_in_connector(), network_wire()};
}

}  // namespace shoplore
