// Fuel: petrol and diesel starve alike, and the vent floods. Pressure codes are shared on purpose.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewPlugs{"replace", "spark_plug"};
constexpr FixName kNewMassMeter{"replace", "air_mass_meter"};
constexpr FixName kNewFuelFilter{"replace", "fuel_filter"};
constexpr FixName kNewFuelPump{"replace", "fuel_pump"};
constexpr FixName kNewCrankSensor{"replace", "crankshaft_sensor"};
constexpr FixName kNewInjector{"replace", "injector"};

FailurePattern purge_valve() {
  return {.id = "purge_valve_stuck_open",
          .component = "purge_valve",
          .failure = "stuck_open",
          .system = System::kFuel,
          .group = ComplaintGroup::kRunning,
          .share = 40,
          .symptoms = {{"hard_start", 0.997},
                       {"lumpy_idle", 0.55},
                       {"stalls", 0.65},
                       {"engine_lamp_on", 0.70},
                       {"fuel_smell", 0.35},
                       {"misfire", 0.22},
                       {"refuel_trouble", 0.18},
                       {"hesitation", 0.22}},
          .codes =
              {{"P0496", 0.48}, {"P0441", 0.34}, {"P0172", 0.28}, {"P0171", 0.22}, {"P0300", 0.12}},
          .conditions = {{"after_refuelling", 0.72}},
          .checks = {{"purge_valve_blow", 0.90},
                     {"fuel_trim_look", 0.80},
                     {"spark_plug_look", 0.12},
                     {"misfire_counter", 0.30}},
          .earlier = {{kNewPlugs, 0.12}, {{"replace", "fuel_pump"}, 0.14}},
          .signs = {{"codes_recently_cleared", 0.18}},
          .families = {{"AL12P", 0.30}, {"AL16P", 0.25}, {"BW14P", 0.20}, {"EL16P", 0.25}},
          .mileage = {0.05, 0.22, 0.32, 0.25, 0.11, 0.05},
          .plans = {{{{"replace", "purge_valve"}}, 0.94, 0.03, ComebackReason::kPart, 0.6, 48},
                    {{{"clean", "purge_valve"}}, 0.06, 0.70, ComebackReason::kSameCause, 0.5, 0}},
          .removals = {"plug_cover"},
          .found = {"purge valve passes air unplugged, floods the manifold after filling up",
                    "valve stuck open, hose pinched and it started at once"},
          .traps = {"petrol vapour: no lamp with a hot bulb near the open line"},
          .verification = {"after_refuelling_test"}};
}

FailurePattern fuel_filter() {
  return {
      .id = "fuel_filter_blocked",
      .component = "fuel_filter",
      .failure = "blocked",
      .system = System::kFuel,
      .group = ComplaintGroup::kPower,
      .share = 38,
      .symptoms = {{"lack_of_power", 0.997},
                   {"hesitation", 0.40},
                   {"limp_mode", 0.42},
                   {"engine_lamp_on", 0.70},
                   {"hard_start", 0.30}},
      .codes = {{"P0087", 0.72}, {"P0299", 0.08}},
      .conditions = {{"uphill", 0.50}, {"under_load", 0.40}},
      .checks = {{"fuel_filter_look", 0.88},
                 {"rail_pressure_live", 0.86},
                 {"lift_pump_flow", 0.45},
                 {"boost_log", 0.20},
                 {"boost_hose_look", 0.05},
                 {"wastegate_linkage_by_hand", 0.05},
                 {"visual_inspection", 0.08}},
      .earlier = {{{"replace", "high_pressure_pump"}, 0.12},
                  {kNewMassMeter, 0.10},
                  {{"replace", "fuel_rail_sensor"}, 0.18}},
      .signs = {{"new_part_fitted", 0.12}},
      .families = {{"DM25D", 0.30}, {"DM22D", 0.25}, {"DM30D", 0.25}, {"BW24D", 0.20}},
      .mileage = {0.02, 0.16, 0.34, 0.27, 0.14, 0.07},
      .plans = {{{kNewFuelFilter}, 0.84, 0.07, ComebackReason::kSameCause, 0.8, 34},
                {{kNewFuelFilter, {"clean", "fuel_tank"}},
                 0.12,
                 0.02,
                 ComebackReason::kWorkmanship,
                 3.0,
                 60},
                {{{"replace", "lift_pump"}}, 0.04, 0.90, ComebackReason::kWrongCause, 1.5, 120}},
      .removals = {"fuel_filter_off"},
      .found = {"filter black and full, water ran out of the drain",
                "rail pressure falls away at full load, filter choked with rust from the drum",
                "wax on the paper, farm diesel in frost"},
      .season = kFrost,
      .facts = {heavy_work()},
      .traps = {"fill the new filter or bleed it, the pump dies dry"},
      .verification = {"uphill_road_test"},
      .contributing = {{"fuel_tank", "contaminated"}}};
}

FailurePattern diesel_injector() {
  return {
      .id = "injector_leaking",
      .component = "injector",
      .failure = "leaking",
      .system = System::kFuel,
      .group = ComplaintGroup::kRunning,
      .share = 34,
      .symptoms = {{"hard_start", 0.997},
                   {"hard_start_hot", 0.66},
                   {"lumpy_idle", 0.48},
                   {"engine_lamp_on", 0.62},
                   {"lack_of_power", 0.30},
                   {"knock_diesel", 0.34},
                   {"stalls", 0.15}},
      .codes = {{"P0087", 0.60}, {"P0201", 0.10}, {"P0202", 0.10}},
      .conditions = {{"hot", 0.48}, {"hot_soak", 0.28}},
      .checks = {{"injector_leak_off", 0.90},
                 {"rail_pressure_cranking", 0.84},
                 {"rail_pressure_live", 0.50},
                 {"injector_balance", 0.42},
                 {"fuel_filter_look", 0.12},
                 {"compression_test", 0.06},
                 {"connector_open_look", 0.06}},
      .earlier = {{kNewFuelFilter, 0.34},
                  {{"replace", "high_pressure_pump"}, 0.14},
                  {{"replace", "glow_plug"}, 0.20}},
      .signs = {{"new_part_fitted", 0.20}},
      .families = {{"AL20D", 0.25}, {"BW20D", 0.25}, {"CM20D", 0.20}, {"EL20D", 0.30}},
      .mileage = weibull_bands(3.0, 210),
      .plans =
          {{{kNewInjector}, 0.70, 0.08, ComebackReason::kSameCause, 2.2, 260},
           {{kNewInjector, {"code_in", "control_unit"}},
            0.24,
            0.03,
            ComebackReason::kPart,
            2.6,
            280},
           {{{"replace", "metering_valve"}}, 0.06, 0.90, ComebackReason::kWrongCause, 1.6, 140}},
      .removals = {"plug_cover", "injectors_out"},
      .found = {"number two runs back three times what the others do",
                "rail will not build while cranking hot, one injector leaks back",
                "leak-off bottle full from one cylinder"},
      .traps = {"let the rail stand down before opening a line",
                "the code on the new injector must go in"},
      .verification = {"hot_idle_test"}};
}

FailurePattern petrol_pump() {
  return {
      .id = "fuel_pump_worn",
      .component = "fuel_pump",
      .failure = "worn",
      .system = System::kFuel,
      .group = ComplaintGroup::kRunning,
      .share = 28,
      .symptoms = {{"stalls", 0.92},
                   {"hard_start", 0.62},
                   {"hesitation", 0.52},
                   {"lack_of_power", 0.46},
                   {"engine_lamp_on", 0.55},
                   {"fuel_starvation_low_tank", 0.45},
                   {"stalls_when_hot", 0.30},
                   {"no_start", 0.30}},
      .codes = {{"P0087", 0.46}, {"P0171", 0.32}, {"P0300", 0.14}},
      .conditions = {{"low_fuel", 0.40}, {"under_load", 0.30}, {"hot", 0.28}},
      .checks = {{"fuel_pressure_petrol", 0.90},
                 {"fuel_pump_current", 0.80},
                 {"fuel_trim_look", 0.50},
                 {"crank_sensor_resistance", 0.05},
                 {"crank_signal_scope", 0.05},
                 {"spark_plug_look", 0.10},
                 {"misfire_counter", 0.35}},
      .earlier = {{kNewFuelFilter, 0.30},
                  {{"replace", "fuel_pump_relay"}, 0.22},
                  {kNewCrankSensor, 0.16}},
      .signs = {{"new_part_fitted", 0.18}},
      .families = {{"CM10P", 0.25}, {"AL10P", 0.25}, {"EL12P", 0.25}, {"CM12P", 0.25}},
      .mileage = weibull_bands(2.6, 185),
      .plans =
          {{{kNewFuelPump}, 0.90, 0.05, ComebackReason::kPart, 1.6, 145},
           {{{"replace", "fuel_pump_relay"}}, 0.10, 0.85, ComebackReason::kWrongCause, 0.4, 18}},
      .removals = {"seat"},
      .found = {"pressure falls off after ten minutes, pump draws too little",
                "pump worn, commutator gone, starts again after a knock on the tank",
                "two bar where there should be four"},
      .traps = {"petrol runs out of the flange: tank below half before you open it"},
      .verification = {"uphill_road_test"},
      .contributing = {{"fuel_filter", "blocked"}}};
}

}  // namespace

std::vector<FailurePattern> fuel_patterns() {
  return {purge_valve(), fuel_filter(), diesel_injector(), petrol_pump()};
}

}  // namespace shoplore
