// Drain, charging and earth: a flat battery is a symptom that four causes share.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {
namespace {

constexpr FixName kNewBattery{"replace", "battery"};
constexpr FixName kNewAlternator{"replace", "alternator"};

Pattern door_latch() {
  return {
      .id = "door_latch_switch_sticking",
      .component = "door_latch_switch",
      .failure = "sticking",
      .group = Group::kElectrics,
      .share = 58,
      .scanned = 0.60,
      .symptoms = {{"battery_flat_overnight", 0.92}, {"interior_lamp_stays_on", 0.36},
                   {"door_ajar_shown", 0.34}, {"locking_odd", 0.40}, {"slow_crank", 0.25},
                   {"no_start", 0.35}, {"clock_resets", 0.20}},
      .codes = {{"B1421", 0.46}, {"P0562", 0.22}},
      .conditions = {{"overnight", 0.60}, {"wet", 0.12}, {"frost", 0.06}},
      .checks = {{"quiescent_current", 0.55, 0.82}, {"door_switch_live", 0.42, 0.85},
                 {"battery_load_test", 0.45, 0.25}, {"charging_voltage", 0.38, 0.04},
                 {"earth_volt_drop", 0.08, 0.06}},
      .earlier = {{kNewBattery, 0.40}, {kNewAlternator, 0.07}},
      .signs = {{"new_part_fitted", 0.22}, {"battery_disconnected_lately", 0.25}},
      .families = {{"AL15D", 0.14}, {"AL12P", 0.12}, {"BW20D", 0.18}, {"BW16D", 0.12},
                   {"CM12P", 0.10}, {"CM16P", 0.08}, {"EL18H", 0.14}, {"DM13D", 0.12}},
      .mileage = {0.08, 0.26, 0.30, 0.20, 0.11, 0.05},
      .plans = {{{{"replace", "door_latch_switch"}}, 0.66, 0.04, ComebackReason::kPart, 1.2, 38},
                {{{"replace", "door_latch"}}, 0.20, 0.03, ComebackReason::kPart, 1.4, 110},
                {{{"lubricate", "door_latch_switch"}}, 0.14, 0.55, ComebackReason::kSameCause, 0.5,
                 3}},
      .removals = {"door_card"},
      .found = {"latch switch sticks, module never sleeps, draw drops when pulled by hand",
                "rear door contact says open all night", "switch in the latch hangs"}};
}

Pattern battery_worn() {
  return {
      .id = "battery_worn",
      .component = "battery",
      .failure = "worn",
      .group = Group::kElectrics,
      .share = 36,
      .scanned = 0.45,
      .symptoms = {{"battery_flat_overnight", 0.74}, {"slow_crank", 0.66}, {"no_start", 0.36},
                   {"clock_resets", 0.28}, {"lights_flicker", 0.12}, {"hard_start", 0.25},
                   {"electrics_odd", 0.15}},
      .codes = {{"P0562", 0.36}},
      .conditions = {{"overnight", 0.40}, {"frost", 0.38}, {"cold_start", 0.30},
                     {"short_trips", 0.35}},
      .checks = {{"battery_load_test", 0.70, 0.90}, {"charging_voltage", 0.45, 0.06},
                 {"quiescent_current", 0.26, 0.08}, {"earth_volt_drop", 0.16, 0.05},
                 {"starter_current", 0.18, 0.15}, {"door_switch_live", 0.05, 0.05}},
      .earlier = {{kNewBattery, 0.05}, {kNewAlternator, 0.10}, {{"charge", "battery"}, 0.30}},
      .signs = {{"battery_disconnected_lately", 0.12}},
      .families = {{"AL12P", 0.12}, {"AL15D", 0.12}, {"BW14P", 0.10}, {"BW16D", 0.10},
                   {"CM12P", 0.10}, {"CM18D", 0.08}, {"DM25D", 0.14}, {"DM22D", 0.08},
                   {"EL10P", 0.10}, {"EL20D", 0.06}},
      .mileage = {0.14, 0.28, 0.26, 0.18, 0.09, 0.05},
      .plans = {{{kNewBattery}, 0.92, 0.03, ComebackReason::kPart, 0.4, 110},
                {{{"charge", "battery"}}, 0.08, 0.80, ComebackReason::kSameCause, 0.3, 0}},
      .removals = {},
      .found = {"battery fails under load after a full charge", "two cells gone, eight years old"}};
}

Pattern alternator_pulley() {
  return {
      .id = "alternator_pulley_locked",
      .component = "alternator_pulley",
      .failure = "overrunning_lost",
      .group = Group::kElectrics,
      .share = 42,
      .scanned = 0.50,
      .symptoms = {{"belt_squeal", 0.72}, {"belt_flutter", 0.62}, {"charge_lamp_on", 0.38},
                   {"lights_flicker", 0.28}, {"battery_flat_overnight", 0.14},
                   {"rattle_cold_start", 0.18}},
      .codes = {{"P0562", 0.22}, {"P0620", 0.26}},
      .conditions = {{"idle", 0.40}, {"cold_start", 0.26}, {"lights_on", 0.30}, {"wet", 0.15}},
      .checks = {{"pulley_freewheel", 0.50, 0.90}, {"belt_tensioner_watch", 0.52, 0.86},
                 {"charging_voltage", 0.48, 0.22}, {"battery_load_test", 0.20, 0.12},
                 {"chain_listen", 0.06, 0.20}},
      .earlier = {{{"replace", "drive_belt"}, 0.42}, {{"replace", "belt_tensioner"}, 0.30},
                  {kNewBattery, 0.06}},
      .signs = {{"new_part_fitted", 0.26}},
      .families = {{"BW16D", 0.16}, {"BW20D", 0.18}, {"AL15D", 0.14}, {"AL20D", 0.16},
                   {"DM13D", 0.12}, {"CM18D", 0.12}, {"EL20D", 0.12}},
      .mileage = {0.02, 0.16, 0.32, 0.28, 0.15, 0.07},
      .plans = {{{{"replace", "alternator_pulley"}}, 0.70, 0.03, ComebackReason::kPart, 1.1, 52},
                {{{"replace", "alternator_pulley"}, {"replace", "drive_belt"}}, 0.24, 0.03,
                 ComebackReason::kPart, 1.3, 80},
                {{{"replace", "belt_tensioner"}}, 0.06, 0.85, ComebackReason::kSameCause, 1.2,
                 75}},
      .removals = {"drive_belt_off"},
      .found = {"pulley locked both ways, tensioner hammered by it",
                "freewheel in the pulley gone, belt jumps at idle"}};
}

Pattern earth_strap() {
  return {
      .id = "earth_strap_high_resistance",
      .component = "earth_strap",
      .failure = "high_resistance",
      .group = Group::kElectrics,
      .share = 38,
      .scanned = 0.62,
      .symptoms = {{"slow_crank", 0.74}, {"lights_flicker", 0.48}, {"electrics_odd", 0.42},
                   {"no_start", 0.40}, {"battery_flat_overnight", 0.16}, {"clock_resets", 0.08},
                   {"charge_lamp_on", 0.14}, {"hard_start", 0.25}},
      .codes = {{"P0562", 0.30}, {"U0100", 0.20}, {"U0121", 0.14}},
      .conditions = {{"wet", 0.22}, {"cold_start", 0.25}, {"hot_soak", 0.12}, {"lights_on", 0.28}},
      .checks = {{"earth_volt_drop", 0.50, 0.90}, {"battery_load_test", 0.46, 0.14},
                 {"charging_voltage", 0.42, 0.18}, {"starter_current", 0.26, 0.30},
                 {"quiescent_current", 0.10, 0.05}, {"wiggle_test", 0.14, 0.45},
                 {"visual_inspection", 0.20, 0.35}},
      .earlier = {{kNewBattery, 0.36}, {{"replace", "starter_motor"}, 0.30}, {kNewAlternator, 0.08}},
      .signs = {{"new_part_fitted", 0.24}, {"fastener_missing", 0.10},
                {"battery_disconnected_lately", 0.18}},
      .families = {{"DM25D", 0.26}, {"DM22D", 0.16}, {"DM13D", 0.12}, {"AL20D", 0.12},
                   {"BW14P", 0.10}, {"CM12P", 0.12}, {"EL10P", 0.12}},
      .mileage = {0.04, 0.20, 0.28, 0.24, 0.15, 0.09},
      .plans = {{{{"replace", "earth_strap"}}, 0.76, 0.02, ComebackReason::kPart, 0.8, 18},
                {{{"clean", "earth_strap"}, {"tighten", "earth_strap"}}, 0.24, 0.25,
                 ComebackReason::kSameCause, 0.5, 0}},
      .removals = {"undertray"},
      .found = {"engine earth eaten by salt, over a volt lost while cranking",
                "earth strap down to three strands", "strap green under the sleeve"}};
}

}  // namespace

std::vector<Pattern> electrics_patterns() {
  return {door_latch(), battery_worn(), alternator_pulley(), earth_strap()};
}

}  // namespace shoplore::demo
