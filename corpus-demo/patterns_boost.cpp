// Diesel complaints: under-boost in its several disguises, exhaust gas and filter, cold starts.
// They share lack of power, limp mode and P0299 on purpose: telling them apart is the work.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {
namespace {

constexpr FixName kNewTurbo{"replace", "turbocharger"};
constexpr FixName kCleanEgr{"clean", "egr_valve"};
constexpr FixName kNewBoostSensor{"replace", "boost_sensor"};

Pattern wastegate_linkage() {
  return {
      .id = "wastegate_linkage_seized_open",
      .component = "wastegate_linkage",
      .failure = "seized_open",
      .group = Group::kBoost,
      .share = 138,
      .scanned = 0.92,
      .symptoms = {{"lack_of_power", 0.95}, {"limp_mode", 0.35}, {"engine_lamp_on", 0.75},
                   {"whistle_under_load", 0.06}, {"black_smoke", 0.12}, {"hesitation", 0.12}},
      .codes = {{"P0299", 0.84}, {"P2263", 0.15}, {"P0045", 0.06}, {"P0101", 0.04}},
      .conditions = {{"uphill", 0.55}, {"under_load", 0.35}, {"motorway", 0.15}, {"hot", 0.08}},
      .checks = {{"wastegate_linkage_by_hand", 0.52, 0.92}, {"boost_log", 0.40, 0.94},
                 {"boost_hose_look", 0.40, 0.05}, {"smoke_test", 0.18, 0.05},
                 {"vane_sweep_test", 0.22, 0.25}, {"turbo_shaft_play", 0.20, 0.08},
                 {"actuator_vacuum_test", 0.25, 0.55}, {"visual_inspection", 0.15, 0.10}},
      .earlier = {{kNewTurbo, 0.24}, {kNewBoostSensor, 0.06}, {kCleanEgr, 0.05},
                  {{"replace", "boost_solenoid"}, 0.06}},
      .signs = {{"new_part_fitted", 0.30}, {"fastener_missing", 0.14}, {"tool_marks", 0.12}},
      .families = {{"BW16D", 0.48}, {"BW20D", 0.14}, {"AL15D", 0.14}, {"DM13D", 0.12},
                   {"CM18D", 0.12}},
      .mileage = {0.02, 0.18, 0.38, 0.25, 0.12, 0.05},
      .plans = {{{{"replace", "wastegate_linkage"}}, 0.58, 0.04, ComebackReason::kPart, 2.5, 90},
                {{{"free_off", "wastegate_linkage"}, {"lubricate", "wastegate_linkage"}}, 0.22,
                 0.45, ComebackReason::kSameCause, 1.5, 5},
                {{{"replace", "wastegate_linkage"}, {"replace", "wastegate_actuator"}}, 0.17,
                 0.03, ComebackReason::kWorkmanship, 3.5, 240},
                {{kNewTurbo}, 0.03, 1.0, ComebackReason::kWrongCause, 5, 780}},
      .removals = {"heat_shield"},
      .found = {"linkage rusted solid in the open position, arm would not move by hand",
                "wastegate arm stuck fast open, lever needed to shift it",
                "rod moves but arm on the spindle seized, flap hangs open"}};
}

Pattern sticking_vanes() {
  return {
      .id = "turbocharger_vanes_sticking",
      .component = "turbocharger_vanes",
      .failure = "sticking",
      .group = Group::kBoost,
      .share = 58,
      .scanned = 0.92,
      .symptoms = {{"lack_of_power", 0.92}, {"limp_mode", 0.62}, {"engine_lamp_on", 0.80},
                   {"whistle_under_load", 0.07}, {"black_smoke", 0.32}, {"hesitation", 0.22}},
      .codes = {{"P0299", 0.66}, {"P2263", 0.45}, {"P0045", 0.10}, {"P0234", 0.20}},
      .conditions = {{"uphill", 0.45}, {"under_load", 0.32}, {"motorway", 0.32},
                     {"short_trips", 0.30}},
      .checks = {{"wastegate_linkage_by_hand", 0.36, 0.10}, {"boost_log", 0.40, 0.92},
                 {"boost_hose_look", 0.38, 0.05}, {"smoke_test", 0.18, 0.05},
                 {"vane_sweep_test", 0.48, 0.86}, {"turbo_shaft_play", 0.24, 0.12},
                 {"actuator_vacuum_test", 0.28, 0.50}, {"visual_inspection", 0.15, 0.06}},
      .earlier = {{kNewTurbo, 0.06}, {kCleanEgr, 0.10}, {kNewBoostSensor, 0.06},
                  {{"replace", "boost_solenoid"}, 0.08}},
      .signs = {{"new_part_fitted", 0.10}, {"codes_recently_cleared", 0.12}},
      .families = {{"BW16D", 0.14}, {"BW20D", 0.26}, {"AL20D", 0.20}, {"DM22D", 0.22},
                   {"EL20D", 0.18}},
      .mileage = {0.01, 0.12, 0.27, 0.30, 0.20, 0.10},
      .plans = {{{{"clean", "turbocharger_vanes"}}, 0.50, 0.28, ComebackReason::kSameCause, 5, 60},
                {{kNewTurbo}, 0.42, 0.03, ComebackReason::kPart, 5.5, 820},
                {{{"relearn", "turbocharger_vanes"}}, 0.08, 0.60, ComebackReason::kSameCause, 1,
                 0}},
      .removals = {"heat_shield", "intake_pipe"},
      .found = {"sweep stops short, vanes coked and sticking",
                "vanes hang when warm, soot ring on the unison ring",
                "vanes stiff through half the travel"}};
}

Pattern charge_air_hose() {
  return {
      .id = "charge_air_hose_split",
      .component = "charge_air_hose",
      .failure = "split",
      .group = Group::kBoost,
      .share = 78,
      .scanned = 0.88,
      .symptoms = {{"lack_of_power", 0.92}, {"limp_mode", 0.30}, {"engine_lamp_on", 0.62},
                   {"whistle_under_load", 0.72}, {"black_smoke", 0.60}, {"hesitation", 0.15}},
      .codes = {{"P0299", 0.70}, {"P2263", 0.14}, {"P0101", 0.18}},
      .conditions = {{"uphill", 0.40}, {"under_load", 0.60}, {"motorway", 0.15}},
      .checks = {{"wastegate_linkage_by_hand", 0.24, 0.05}, {"boost_log", 0.34, 0.93},
                 {"boost_hose_look", 0.55, 0.66}, {"smoke_test", 0.34, 0.90},
                 {"vane_sweep_test", 0.14, 0.08}, {"turbo_shaft_play", 0.14, 0.08},
                 {"actuator_vacuum_test", 0.14, 0.08}, {"visual_inspection", 0.25, 0.50}},
      .earlier = {{kNewTurbo, 0.02}, {kNewBoostSensor, 0.06}, {{"replace", "air_mass_meter"}, 0.08},
                  {{"replace", "air_filter"}, 0.06}},
      .signs = {{"hose_clip_wrong", 0.20}, {"tape_repair", 0.14}, {"cable_ties", 0.08}},
      .families = {{"BW16D", 0.20}, {"BW20D", 0.16}, {"AL15D", 0.18}, {"AL20D", 0.14},
                   {"DM25D", 0.14}, {"DM13D", 0.08}, {"EL20D", 0.10}},
      .mileage = {0.03, 0.16, 0.28, 0.27, 0.17, 0.09},
      .plans = {{{{"replace", "charge_air_hose"}}, 0.86, 0.03, ComebackReason::kPart, 1.2, 75},
                {{{"reseat", "charge_air_hose"}}, 0.09, 0.45, ComebackReason::kSameCause, 0.6, 4},
                {{{"seal", "charge_air_hose"}}, 0.05, 0.70, ComebackReason::kSameCause, 0.7, 6}},
      .removals = {"undertray"},
      .found = {"hose split on the underside, opens under load only, soot track next to it",
                "charge air hose burst at the clip, oil mist all over",
                "crack in the fold of the hose, found with smoke"}};
}

Pattern egr_passage() {
  return {
      .id = "egr_passage_blocked",
      .component = "egr_passage",
      .failure = "blocked",
      .group = Group::kBoost,
      .share = 58,
      .scanned = 0.93,
      .symptoms = {{"lack_of_power", 0.52}, {"limp_mode", 0.15}, {"engine_lamp_on", 0.90},
                   {"lumpy_idle", 0.48}, {"black_smoke", 0.25}, {"hesitation", 0.36},
                   {"stalls", 0.15}, {"whistle_under_load", 0.03}},
      .codes = {{"P0401", 0.82}, {"P0101", 0.22}, {"P0403", 0.06}, {"P0299", 0.06}},
      .conditions = {{"short_trips", 0.45}, {"idle", 0.25}, {"hot", 0.12}, {"light_throttle", 0.18}},
      .checks = {{"egr_flow_test", 0.50, 0.90}, {"egr_passage_look", 0.46, 0.88},
                 {"boost_log", 0.10, 0.15}, {"boost_hose_look", 0.14, 0.05},
                 {"filter_pressure_idle", 0.14, 0.15}, {"visual_inspection", 0.12, 0.06}},
      .earlier = {{kCleanEgr, 0.18}, {{"replace", "egr_valve"}, 0.24},
                  {{"replace", "air_mass_meter"}, 0.08}},
      .signs = {{"new_part_fitted", 0.22}, {"codes_recently_cleared", 0.20}},
      .families = {{"BW16D", 0.14}, {"AL15D", 0.20}, {"AL20D", 0.14}, {"DM22D", 0.18},
                   {"CM18D", 0.18}, {"EL20D", 0.16}},
      .mileage = {0.02, 0.14, 0.30, 0.28, 0.17, 0.09},
      .plans = {{{{"clean", "egr_passage"}}, 0.62, 0.10, ComebackReason::kSameCause, 2.5, 20},
                {{{"clean", "egr_passage"}, {"replace", "egr_valve"}}, 0.28, 0.04,
                 ComebackReason::kPart, 3.2, 210},
                {{{"replace", "egr_valve"}}, 0.10, 0.75, ComebackReason::kSameCause, 1.5, 190}},
      .removals = {"intake_pipe", "air_filter_box"},
      .found = {"passage at the manifold closed up with soot, valve itself fine",
                "egr port coked to a pencil hole", "no flow with valve commanded open, bore blocked"}};
}

Pattern filter_hose() {
  return {
      .id = "filter_pressure_hose_split",
      .component = "filter_pressure_hose",
      .failure = "split",
      .group = Group::kBoost,
      .share = 52,
      .scanned = 0.94,
      .symptoms = {{"lack_of_power", 0.40}, {"limp_mode", 0.40}, {"engine_lamp_on", 0.85},
                   {"filter_lamp_on", 0.66}, {"frequent_regeneration", 0.42}, {"black_smoke", 0.06},
                   {"whistle_under_load", 0.04}},
      .codes = {{"P2453", 0.78}, {"P2463", 0.22}, {"P2002", 0.20}, {"P0299", 0.04}},
      .conditions = {{"short_trips", 0.35}, {"motorway", 0.15}, {"wet", 0.06}},
      .checks = {{"filter_pressure_idle", 0.55, 0.85}, {"filter_hose_look", 0.52, 0.86},
                 {"boost_log", 0.08, 0.15}, {"boost_hose_look", 0.10, 0.05},
                 {"egr_flow_test", 0.12, 0.12}, {"visual_inspection", 0.14, 0.20}},
      .earlier = {{{"replace", "filter_pressure_sensor"}, 0.34},
                  {{"clean", "particulate_filter"}, 0.18}, {kCleanEgr, 0.06}},
      .signs = {{"new_part_fitted", 0.26}, {"codes_recently_cleared", 0.24}, {"cable_ties", 0.08}},
      .families = {{"BW20D", 0.22}, {"BW16D", 0.12}, {"AL15D", 0.16}, {"AL20D", 0.18},
                   {"DM13D", 0.14}, {"CM18D", 0.10}, {"EL20D", 0.08}},
      .mileage = {0.03, 0.18, 0.32, 0.27, 0.14, 0.06},
      .plans = {{{{"replace", "filter_pressure_hose"}}, 0.80, 0.03, ComebackReason::kPart, 1, 28},
                {{{"replace", "filter_pressure_hose"}, {"replace", "filter_pressure_sensor"}}, 0.15,
                 0.03, ComebackReason::kWorkmanship, 1.4, 95},
                {{{"replace", "filter_pressure_sensor"}}, 0.05, 0.85, ComebackReason::kSameCause, 1,
                 68}},
      .removals = {"undertray"},
      .found = {"front pressure hose melted and split near the pipe",
                "hose to the filter sensor perished, reads zero at speed",
                "pressure hose cracked on the metal pipe, sensor fine"}};
}

Pattern turbo_worn() {
  return {
      .id = "turbocharger_worn",
      .component = "turbocharger",
      .failure = "worn",
      .group = Group::kBoost,
      .share = 14,
      .scanned = 0.88,
      .symptoms = {{"lack_of_power", 0.85}, {"limp_mode", 0.35}, {"engine_lamp_on", 0.60},
                   {"whistle_under_load", 0.30}, {"turbo_whine", 0.66}, {"blue_smoke", 0.55},
                   {"oil_consumption", 0.45}, {"black_smoke", 0.18}},
      .codes = {{"P0299", 0.62}, {"P2263", 0.18}},
      .conditions = {{"uphill", 0.35}, {"under_load", 0.50}},
      .checks = {{"turbo_shaft_play", 0.60, 0.90}, {"boost_log", 0.36, 0.90},
                 {"wastegate_linkage_by_hand", 0.28, 0.08}, {"boost_hose_look", 0.36, 0.12},
                 {"vane_sweep_test", 0.18, 0.20}, {"visual_inspection", 0.18, 0.30}},
      .earlier = {{kNewBoostSensor, 0.05}, {kNewTurbo, 0.03}},
      .signs = {{"oil_on_parts", 0.20}},
      .families = {{"BW16D", 0.16}, {"BW20D", 0.24}, {"AL20D", 0.20}, {"DM25D", 0.24},
                   {"EL20D", 0.16}},
      .mileage = {0.0, 0.04, 0.16, 0.30, 0.30, 0.20},
      .plans = {{{kNewTurbo}, 0.70, 0.05, ComebackReason::kPart, 5.5, 820},
                {{{"overhaul", "turbocharger"}}, 0.30, 0.14, ComebackReason::kWorkmanship, 6, 420}},
      .removals = {"heat_shield", "intake_pipe"},
      .found = {"shaft play far too much, wheel has touched the housing",
                "oil standing in the intake pipe, shaft rocks in its bearing"}};
}

Pattern glow_module() {
  return {
      .id = "glow_module_internal_fault",
      .component = "glow_module",
      .failure = "internal_fault",
      .group = Group::kElectrics,
      .share = 42,
      .scanned = 0.88,
      .symptoms = {{"hard_start", 0.90}, {"white_smoke", 0.42}, {"glow_lamp_flashing", 0.55},
                   {"engine_lamp_on", 0.50}, {"lumpy_idle", 0.35}, {"no_start", 0.15}},
      .codes = {{"P0670", 0.62}, {"P0380", 0.55}},
      .conditions = {{"cold_start", 0.70}, {"frost", 0.35}, {"overnight", 0.15}},
      .checks = {{"glow_current", 0.45, 0.88}, {"glow_supply", 0.45, 0.90},
                 {"glow_plug_resistance", 0.40, 0.12}, {"battery_load_test", 0.30, 0.12}},
      .earlier = {{{"replace", "glow_plug"}, 0.32}, {{"replace", "battery"}, 0.12}},
      .signs = {{"new_part_fitted", 0.18}},
      .families = {{"BW16D", 0.18}, {"AL15D", 0.18}, {"DM25D", 0.26}, {"DM22D", 0.22},
                   {"DM13D", 0.16}},
      .mileage = {0.04, 0.20, 0.30, 0.24, 0.14, 0.08},
      .plans = {{{{"replace", "glow_module"}}, 0.72, 0.04, ComebackReason::kPart, 0.8, 85},
                {{{"replace", "glow_module"}, {"replace", "glow_plug"}}, 0.22, 0.03,
                 ComebackReason::kPart, 2, 160},
                {{{"replace", "glow_plug"}}, 0.06, 0.90, ComebackReason::kSameCause, 1.6, 80}},
      .removals = {"plug_cover"},
      .found = {"no supply at the plugs from two outputs of the module, plugs measure well",
                "glow module dead, plugs all fine"}};
}

}  // namespace

std::vector<Pattern> boost_patterns() {
  return {wastegate_linkage(), sticking_vanes(), charge_air_hose(), egr_passage(),
          filter_hose(),       turbo_worn(),     glow_module()};
}

}  // namespace shoplore::demo
