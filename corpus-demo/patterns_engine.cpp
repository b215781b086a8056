// The engine itself: what times it, feeds it air and tells its control unit where it stands.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewPlugs{"replace", "spark_plug"};
constexpr FixName kNewMassMeter{"replace", "air_mass_meter"};
constexpr FixName kNewFuelFilter{"replace", "fuel_filter"};
constexpr FixName kNewFuelPump{"replace", "fuel_pump"};
constexpr FixName kNewCrankSensor{"replace", "crankshaft_sensor"};

FailurePattern stretched_chain() {
  return {.id = "timing_chain_stretched",
          .component = "timing_chain",
          .failure = "stretched",
          .system = System::kEngine,
          .group = ComplaintGroup::kRunning,
          .share = 30,
          .symptoms = {{"rattle_cold_start", 0.997},
                       {"lumpy_idle", 0.40},
                       {"engine_lamp_on", 0.82},
                       {"lack_of_power", 0.45},
                       {"misfire", 0.32},
                       {"hard_start", 0.26},
                       {"hesitation", 0.22},
                       {"oil_consumption", 0.15}},
          .codes = {{"P0016", 0.72}, {"P0011", 0.32}, {"P0300", 0.20}, {"P0340", 0.14}},
          .conditions = {{"cold_start", 0.60}},
          .checks = {{"chain_listen", 0.80},
                     {"cam_timing_live", 0.90},
                     {"compression_test", 0.25},
                     {"misfire_counter", 0.40},
                     {"coil_swap", 0.06},
                     {"plug_well_look", 0.05}},
          .earlier = {{{"replace", "camshaft_sensor"}, 0.22},
                      {{"replace", "camshaft_adjuster"}, 0.08},
                      {kNewPlugs, 0.10}},
          .signs = {{"new_part_fitted", 0.14}, {"codes_recently_cleared", 0.16}},
          .families = {{"CM14P", 0.20}, {"CM16P", 0.35}, {"EL16P", 0.25}, {"AL16P", 0.20}},
          .mileage = {0.05, 0.22, 0.32, 0.25, 0.11, 0.05},
          .plans = {{{{"replace", "timing_chain"}, {"replace", "chain_tensioner"}},
                     0.90,
                     0.03,
                     ComebackReason::kWorkmanship,
                     8,
                     360},
                    {{{"replace", "chain_tensioner"}, {"change_fluid", "engine_oil"}},
                     0.10,
                     0.65,
                     ComebackReason::kSameCause,
                     3,
                     95}},
          .removals = {"cam_cover", "timing_cover"},
          .found = {"chain stretched, tensioner at its last notch, oil black and overdue",
                    "cam out by several degrees, long oil intervals"},
          .facts = {much_idling_and_short_trips()},
          .traps = {"do not crank to see how bad it is", "tensioner bolts are single use"},
          .verification = {"cold_start_test", "rescan_after_drive"},
          .contributing = {{"engine_oil", "degraded"}}};
}

FailurePattern intake_leak() {
  return {
      .id = "intake_gasket_leaking",
      .component = "intake_gasket",
      .failure = "leaking",
      .system = System::kEngine,
      .group = ComplaintGroup::kRunning,
      .share = 30,
      .symptoms = {{"lumpy_idle", 0.997},
                   {"high_idle", 0.62},
                   {"engine_lamp_on", 0.85},
                   {"hesitation", 0.38},
                   {"stalls", 0.20},
                   {"misfire", 0.25},
                   {"hard_start", 0.20}},
      .codes = {{"P0171", 0.76}, {"P0507", 0.42}, {"P0300", 0.20}},
      .conditions = {{"idle", 0.50}, {"cold_start", 0.22}},
      .checks = {{"fuel_trim_look", 0.88},
                 {"brake_cleaner_idle", 0.86},
                 {"smoke_test", 0.88},
                 {"misfire_counter", 0.40},
                 {"purge_valve_blow", 0.05},
                 {"spark_plug_look", 0.10}},
      .earlier = {{kNewMassMeter, 0.28},
                  {{"replace", "oxygen_sensor"}, 0.24},
                  {{"clean", "throttle_body"}, 0.20}},
      .signs = {{"new_part_fitted", 0.24}, {"hose_unclipped", 0.12}},
      .families = {{"AL12P", 0.25}, {"AL16P", 0.20}, {"CM10P", 0.25}, {"EL14P", 0.30}},
      .mileage = weibull_bands(2.2, 170),
      .plans = {{{{"replace", "intake_gasket"}}, 0.90, 0.05, ComebackReason::kWorkmanship, 2.2, 32},
                {{{"tighten", "intake_manifold"}}, 0.10, 0.60, ComebackReason::kSameCause, 0.8, 0}},
      .removals = {"plug_cover", "intake_manifold_off"},
      .found = {"manifold gasket flat between two and three, idle drops with a squirt of cleaner",
                "air gets in at the manifold, trims come down above idle",
                "smoke out of the gasket at the back where nobody looks"},
      .traps = {"idle trims lie once the hose to the servo is off"},
      .verification = {"hot_idle_test"}};
}

// Cold it measures well, which is when everybody measures it.
FailurePattern crank_sensor() {
  return {
      .id = "crankshaft_sensor_intermittent",
      .component = "crankshaft_sensor",
      .failure = "intermittent",
      .system = System::kEngine,
      .group = ComplaintGroup::kRunning,
      .share = 28,
      .symptoms = {{"stalls", 0.997},
                   {"stalls_when_hot", 0.62},
                   {"hard_start", 0.45},
                   {"engine_lamp_on", 0.60},
                   {"no_start", 0.35},
                   {"rev_counter_dead", 0.25}},
      .codes = {{"P0335", 0.62}, {"P0340", 0.12}},
      .conditions = {{"hot", 0.52}, {"hot_soak", 0.32}},
      .checks = {{"crank_sensor_resistance", 0.34},
                 {"crank_signal_scope", 0.86},
                 {"fuel_pressure_petrol", 0.08},
                 {"fuel_pump_current", 0.08},
                 {"connector_open_look", 0.12},
                 {"wiggle_test", 0.15},
                 {"misfire_counter", 0.20}},
      .earlier = {{kNewFuelPump, 0.24},
                  {{"replace", "fuel_pump_relay"}, 0.20},
                  {kNewFuelFilter, 0.10}},
      .signs = {{"new_part_fitted", 0.20}},
      .families = {{"CM14P", 0.25}, {"EL10P", 0.25}, {"BW20D", 0.25}, {"DM25D", 0.25}},
      .mileage = weibull_bands(2.2, 170),
      .plans =
          {{{kNewCrankSensor}, 0.92, 0.04, ComebackReason::kPart, 0.9, 46},
           {{{"replace", "fuel_pump_relay"}}, 0.08, 0.90, ComebackReason::kWrongCause, 0.4, 18}},
      .removals = {"undertray"},
      .found = {"crank signal drops out once hot, back when it has cooled",
                "sensor ohms fine cold, open at eighty degrees",
                "rev counter falls to nothing a moment before it dies"},
      .traps = {"warm it with a heat gun while the scope runs, cold it proves nothing"},
      .verification = {"hot_idle_test"}};
}

}  // namespace

std::vector<FailurePattern> engine_patterns() {
  return {stretched_chain(), intake_leak(), crank_sensor()};
}

}  // namespace shoplore
