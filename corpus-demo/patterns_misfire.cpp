// Petrol complaints: ignition, mixture and timing. They share misfire and its codes on purpose.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {
namespace {

constexpr FixName kNewCoil{"replace", "ignition_coil"};
constexpr FixName kNewPlugs{"replace", "spark_plug"};
constexpr FixName kNewSeal{"replace", "plug_well_seal"};

// Oil past the well seals kills one coil after another. The quick look from above says dry more
// often than it should: about 35 % of these wells look dry while oil stands below.
Pattern plug_well_oil() {
  return {
      .id = "plug_well_seal_leaking",
      .component = "plug_well_seal",
      .failure = "leaking",
      .group = Group::kMisfire,
      .share = 80,
      .scanned = 0.93,
      .symptoms = {{"misfire", 0.95}, {"lumpy_idle", 0.58}, {"engine_lamp_on", 0.88},
                   {"hesitation", 0.35}, {"lack_of_power", 0.30}, {"oil_leak", 0.18},
                   {"oil_consumption", 0.12}},
      .codes = {{"P0300", 0.20}, {"P0301", 0.18}, {"P0302", 0.20}, {"P0303", 0.42},
                {"P0304", 0.12}, {"P0351", 0.10}, {"P0352", 0.10}, {"P0353", 0.22}},
      .conditions = {{"hot", 0.30}, {"under_load", 0.25}, {"cold_start", 0.10}, {"wet", 0.06}},
      .checks = {{"plug_well_look", 0.62, 0.65}, {"coil_swap", 0.45, 0.80},
                 {"coil_resistance", 0.25, 0.40}, {"spark_plug_look", 0.32, 0.45},
                 {"misfire_counter", 0.40, 0.92}, {"compression_test", 0.12, 0.06},
                 {"connector_open_look", 0.10, 0.08}},
      .earlier = {{kNewCoil, 0.20}, {kNewPlugs, 0.22}},
      .signs = {{"new_part_fitted", 0.42}, {"oil_on_parts", 0.30}, {"sealant_in_excess", 0.18}},
      .families = {{"CM14P", 0.34}, {"CM16P", 0.26}, {"CM12P", 0.06}, {"BW14P", 0.12},
                   {"AL16P", 0.12}, {"EL16P", 0.10}},
      .mileage = {0.02, 0.22, 0.36, 0.24, 0.11, 0.05},
      .plans = {{{kNewCoil}, 0.40, 0.82, ComebackReason::kSameCause, 0.6, 55},
                {{kNewCoil, kNewSeal}, 0.50, 0.07, ComebackReason::kWorkmanship, 2.2, 95},
                {{kNewCoil, kNewSeal, {"replace", "cam_cover_gasket"}}, 0.10, 0.03,
                 ComebackReason::kPart, 2.8, 130}},
      .removals = {"plug_cover", "cam_cover"},
      .found = {"oil standing in the plug well, coil boot swollen",
                "well seal lets oil past, coil soaked", "oil in the well only seen with coil out and a light"}};
}

Pattern plain_coil() {
  return {
      .id = "ignition_coil_internal_fault",
      .component = "ignition_coil",
      .failure = "internal_fault",
      .group = Group::kMisfire,
      .share = 50,
      .scanned = 0.92,
      .symptoms = {{"misfire", 0.95}, {"lumpy_idle", 0.55}, {"engine_lamp_on", 0.86},
                   {"hesitation", 0.38}, {"lack_of_power", 0.32}},
      .codes = {{"P0300", 0.20}, {"P0301", 0.28}, {"P0302", 0.28}, {"P0303", 0.22},
                {"P0304", 0.16}, {"P0351", 0.28}, {"P0352", 0.26}, {"P0353", 0.18}},
      .conditions = {{"hot", 0.40}, {"under_load", 0.35}, {"wet", 0.18}},
      .checks = {{"plug_well_look", 0.42, 0.04}, {"coil_swap", 0.55, 0.90},
                 {"coil_resistance", 0.30, 0.45}, {"spark_plug_look", 0.30, 0.10},
                 {"misfire_counter", 0.40, 0.93}, {"compression_test", 0.10, 0.04},
                 {"connector_open_look", 0.14, 0.08}},
      .earlier = {{kNewCoil, 0.05}, {kNewPlugs, 0.26}},
      .signs = {{"new_part_fitted", 0.15}, {"connector_unlatched", 0.04}},
      .families = {{"CM12P", 0.18}, {"CM14P", 0.12}, {"BW14P", 0.18}, {"AL12P", 0.18},
                   {"AL16P", 0.12}, {"EL10P", 0.12}, {"EL16P", 0.10}},
      .mileage = {0.10, 0.32, 0.30, 0.17, 0.08, 0.03},
      .plans = {{{kNewCoil}, 0.78, 0.03, ComebackReason::kPart, 0.6, 55},
                {{kNewCoil, kNewPlugs}, 0.22, 0.02, ComebackReason::kPart, 1.1, 90}},
      .removals = {"plug_cover"},
      .found = {"misfire follows the coil, well dry", "coil breaks down when hot",
                "coil cracked inside, no spark under load"}};
}

Pattern spark_plugs() {
  return {
      .id = "spark_plug_worn",
      .component = "spark_plug",
      .failure = "worn",
      .group = Group::kMisfire,
      .share = 48,
      .scanned = 0.85,
      .symptoms = {{"misfire", 0.82}, {"lumpy_idle", 0.42}, {"engine_lamp_on", 0.70},
                   {"hesitation", 0.60}, {"lack_of_power", 0.40}, {"hard_start", 0.30},
                   {"high_consumption", 0.22}},
      .codes = {{"P0300", 0.52}, {"P0301", 0.18}, {"P0302", 0.16}, {"P0303", 0.15},
                {"P0304", 0.14}},
      .conditions = {{"under_load", 0.48}, {"cold_start", 0.25}, {"uphill", 0.20}, {"wet", 0.14}},
      .checks = {{"plug_well_look", 0.38, 0.04}, {"coil_swap", 0.34, 0.08},
                 {"coil_resistance", 0.20, 0.06}, {"spark_plug_look", 0.52, 0.88},
                 {"misfire_counter", 0.36, 0.85}, {"compression_test", 0.14, 0.06},
                 {"fuel_trim_look", 0.12, 0.12}},
      .earlier = {{kNewCoil, 0.10}, {kNewPlugs, 0.02}},
      .signs = {{"new_part_fitted", 0.12}},
      .families = {{"CM12P", 0.16}, {"CM14P", 0.12}, {"CM16P", 0.08}, {"BW14P", 0.16},
                   {"AL12P", 0.16}, {"AL16P", 0.12}, {"EL10P", 0.12}, {"EL18H", 0.08}},
      .mileage = {0.04, 0.30, 0.34, 0.20, 0.08, 0.04},
      .plans = {{{kNewPlugs}, 0.88, 0.03, ComebackReason::kPart, 0.9, 42},
                {{kNewPlugs, kNewCoil}, 0.12, 0.02, ComebackReason::kPart, 1.1, 98}},
      .removals = {"plug_cover"},
      .found = {"plugs worn out, gap twice what it should be",
                "tracks on the insulators, plugs long overdue"}};
}

Pattern purge_valve() {
  return {
      .id = "purge_valve_stuck_open",
      .component = "purge_valve",
      .failure = "stuck_open",
      .group = Group::kMisfire,
      .share = 42,
      .scanned = 0.88,
      .symptoms = {{"hard_start", 0.80}, {"lumpy_idle", 0.55}, {"stalls", 0.45},
                   {"engine_lamp_on", 0.70}, {"fuel_smell", 0.35}, {"misfire", 0.22},
                   {"refuel_trouble", 0.18}, {"hesitation", 0.22}},
      .codes = {{"P0496", 0.48}, {"P0441", 0.34}, {"P0172", 0.28}, {"P0171", 0.22},
                {"P0300", 0.12}},
      .conditions = {{"after_refuelling", 0.72}, {"hot_soak", 0.16}, {"idle", 0.18}},
      .checks = {{"purge_valve_blow", 0.48, 0.90}, {"fuel_trim_look", 0.42, 0.80},
                 {"spark_plug_look", 0.14, 0.12}, {"misfire_counter", 0.16, 0.30}},
      .earlier = {{kNewPlugs, 0.12}, {{"replace", "fuel_pump"}, 0.14}},
      .signs = {{"codes_recently_cleared", 0.18}},
      .families = {{"CM12P", 0.14}, {"CM14P", 0.10}, {"CM16P", 0.10}, {"BW14P", 0.14},
                   {"AL12P", 0.22}, {"AL16P", 0.16}, {"EL16P", 0.14}},
      .mileage = {0.06, 0.28, 0.32, 0.20, 0.10, 0.04},
      .plans = {{{{"replace", "purge_valve"}}, 0.94, 0.03, ComebackReason::kPart, 0.6, 48},
                {{{"clean", "purge_valve"}}, 0.06, 0.70, ComebackReason::kSameCause, 0.5, 0}},
      .removals = {"plug_cover"},
      .found = {"purge valve passes air unplugged, floods the manifold after filling up",
                "valve stuck open, hose pinched and it started at once"}};
}

Pattern stretched_chain() {
  return {
      .id = "timing_chain_stretched",
      .component = "timing_chain",
      .failure = "stretched",
      .group = Group::kMisfire,
      .share = 30,
      .scanned = 0.92,
      .symptoms = {{"rattle_cold_start", 0.78}, {"lumpy_idle", 0.40}, {"engine_lamp_on", 0.82},
                   {"lack_of_power", 0.45}, {"misfire", 0.32}, {"hard_start", 0.26},
                   {"hesitation", 0.22}, {"oil_consumption", 0.15}},
      .codes = {{"P0016", 0.72}, {"P0011", 0.32}, {"P0300", 0.20}, {"P0340", 0.14}},
      .conditions = {{"cold_start", 0.60}, {"idle", 0.14}},
      .checks = {{"chain_listen", 0.50, 0.80}, {"cam_timing_live", 0.55, 0.90},
                 {"compression_test", 0.22, 0.25}, {"misfire_counter", 0.20, 0.40},
                 {"coil_swap", 0.08, 0.06}, {"plug_well_look", 0.08, 0.05}},
      .earlier = {{{"replace", "camshaft_sensor"}, 0.22}, {{"replace", "camshaft_adjuster"}, 0.08},
                  {kNewPlugs, 0.10}},
      .signs = {{"new_part_fitted", 0.14}, {"codes_recently_cleared", 0.16}},
      .families = {{"CM14P", 0.20}, {"CM16P", 0.30}, {"BW14P", 0.12}, {"EL16P", 0.22},
                   {"AL16P", 0.16}},
      .mileage = {0.01, 0.14, 0.34, 0.30, 0.15, 0.06},
      .plans = {{{{"replace", "timing_chain"}, {"replace", "chain_tensioner"}}, 0.90, 0.03,
                 ComebackReason::kWorkmanship, 8, 360},
                {{{"replace", "chain_tensioner"}, {"change_fluid", "engine_oil"}}, 0.10, 0.65,
                 ComebackReason::kSameCause, 3, 95}},
      .removals = {"cam_cover", "timing_cover"},
      .found = {"chain stretched, tensioner at its last notch, oil black and overdue",
                "cam out by several degrees, long oil intervals"}};
}

Pattern water_in_connector() {
  return {
      .id = "wiring_connector_water",
      .component = "wiring_connector",
      .failure = "water_entry",
      .group = Group::kMisfire,
      .share = 46,
      .scanned = 0.90,
      .symptoms = {{"misfire", 0.55}, {"stalls", 0.42}, {"engine_lamp_on", 0.78},
                   {"intermittent_cut_in_wet", 0.55}, {"lack_of_power", 0.30},
                   {"electrics_odd", 0.30}, {"hesitation", 0.32}, {"no_start", 0.20},
                   {"water_inside", 0.08}},
      .codes = {{"P0201", 0.26}, {"P0202", 0.22}, {"P0300", 0.14}, {"P0351", 0.16},
                {"P0340", 0.20}, {"U0100", 0.16}, {"P0335", 0.12}},
      .conditions = {{"wet", 0.66}, {"cold_start", 0.12}},
      .checks = {{"connector_open_look", 0.55, 0.88}, {"wiggle_test", 0.42, 0.68},
                 {"coil_swap", 0.22, 0.08}, {"plug_well_look", 0.16, 0.06},
                 {"misfire_counter", 0.24, 0.60}, {"coil_resistance", 0.14, 0.08},
                 {"visual_inspection", 0.20, 0.30}},
      .earlier = {{kNewCoil, 0.14}, {{"replace", "camshaft_sensor"}, 0.10},
                  {{"replace", "injector"}, 0.10}},
      .signs = {{"connector_unlatched", 0.26}, {"tape_repair", 0.14}, {"scotch_splice", 0.12}},
      .families = {{"CM12P", 0.10}, {"CM14P", 0.08}, {"BW14P", 0.12}, {"AL12P", 0.12},
                   {"AL15D", 0.12}, {"DM25D", 0.16}, {"DM13D", 0.12}, {"EL10P", 0.10},
                   {"BW20D", 0.08}},
      .mileage = {0.10, 0.26, 0.28, 0.20, 0.11, 0.05},
      .plans = {{{{"dry_and_protect", "wiring_connector"}}, 0.45, 0.22, ComebackReason::kSameCause,
                 0.8, 6},
                {{{"replace", "wiring_connector"}}, 0.42, 0.04, ComebackReason::kWorkmanship, 1.5,
                 32},
                {{{"repair", "wiring_harness"}, {"seal", "wiring_connector"}}, 0.13, 0.06,
                 ComebackReason::kWorkmanship, 2.4, 25}},
      .removals = {"battery_tray"},
      .found = {"water in the connector, pins green", "connector full of water, seal missing",
                "salt crust on two pins, drops with a wiggle"}};
}

}  // namespace

std::vector<Pattern> misfire_patterns() {
  return {plug_well_oil(), plain_coil(),      spark_plugs(),
          purge_valve(),   stretched_chain(), water_in_connector()};
}

}  // namespace shoplore::demo
