// Body electrics and water: switches that stick, lamps without earth, drains that do not drain.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewBattery{"replace", "battery"};
constexpr FixName kNewAlternator{"replace", "alternator"};

FailurePattern door_latch() {
  return {
      .id = "door_latch_switch_sticking",
      .component = "door_latch_switch",
      .failure = "sticking",
      .system = System::kBody,
      .group = ComplaintGroup::kElectrics,
      .share = 50,
      .symptoms = {{"battery_flat_overnight", 0.997},
                   {"interior_lamp_stays_on", 0.36},
                   {"door_ajar_shown", 0.34},
                   {"locking_odd", 0.40},
                   {"slow_crank", 0.25},
                   {"no_start", 0.35},
                   {"clock_resets", 0.20}},
      .codes = {{"B1421", 0.46}, {"P0562", 0.22}},
      .conditions = {{"overnight", 0.60}},
      .checks = {{"quiescent_current", 0.82},
                 {"door_switch_live", 0.85},
                 {"battery_load_test", 0.25},
                 {"charging_voltage", 0.04},
                 {"earth_volt_drop", 0.06}},
      .earlier = {{kNewBattery, 0.40}, {kNewAlternator, 0.07}},
      .signs = {{"new_part_fitted", 0.22}, {"battery_disconnected_lately", 0.25}},
      .families =
          {{"AL15D", 0.18}, {"BW20D", 0.22}, {"BW16D", 0.20}, {"EL18H", 0.20}, {"DM13D", 0.20}},
      .mileage = {0.07, 0.24, 0.29, 0.22, 0.12, 0.06},
      .plans =
          {{{{"replace", "door_latch_switch"}}, 0.66, 0.04, ComebackReason::kPart, 1.2, 38},
           {{{"replace", "door_latch"}}, 0.20, 0.03, ComebackReason::kPart, 1.4, 110},
           {{{"lubricate", "door_latch_switch"}}, 0.14, 0.55, ComebackReason::kSameCause, 0.5, 3}},
      .removals = {"door_card"},
      .found = {"latch switch sticks, module never sleeps, draw drops when pulled by hand",
                "rear door contact says open all night", "switch in the latch hangs"},
      .season = kRain,
      .facts = {kept_by_the_sea()},
      .traps = {"wait until the modules sleep before reading the draw",
                "shut the latch with a screwdriver, else the door counts as open"},
      .verification = {"drain_measured_again", "overnight_stand"}};
}

FailurePattern tail_lamp() {
  return {
      .id = "tail_lamp_connector_corroded",
      .component = "tail_lamp_connector",
      .failure = "corroded",
      .system = System::kBody,
      .group = ComplaintGroup::kBody,
      .share = 30,
      .symptoms = {{"rear_lamps_odd", 0.997},
                   {"indicator_fast", 0.42},
                   {"brake_light_out", 0.45},
                   {"electrics_odd", 0.20},
                   {"water_inside", 0.08}},
      .codes = {},
      .conditions = {{"wet", 0.34}, {"lights_on", 0.36}, {"braking", 0.15}},
      .checks = {{"lamp_earth_drop", 0.88},
                 {"connector_open_look", 0.82},
                 {"lamp_supply", 0.25},
                 {"water_hose_test", 0.12}},
      .earlier = {{{"replace", "bulb"}, 0.52}, {{"replace", "fuse"}, 0.14}},
      .signs = {{"new_part_fitted", 0.24}, {"snap_splice", 0.18}},
      .families = {{"AL20D", 0.25}, {"BW20D", 0.30}, {"DM25D", 0.25}, {"DM30D", 0.20}},
      .mileage = weibull_bands(1.8, 165),
      .plans =
          {{{{"repair", "tail_lamp_connector"}}, 0.50, 0.14, ComebackReason::kSameCause, 0.9, 8},
           {{{"replace", "tail_lamp_connector"}}, 0.42, 0.03, ComebackReason::kPart, 1.1, 26},
           {{{"replace", "bulb"}}, 0.08, 0.85, ComebackReason::kSameCause, 0.2, 4}},
      .removals = {"rear_trim"},
      .found = {"earth pin of the rear lamp burnt green, all lamps glow into each other",
                "holder melted round the earth, bulbs were new",
                "tow socket spliced into it with a blue clip, rotten"},
      .season = kRain,
      .facts = {kept_by_the_sea()},
      .traps = {"measure with the lamps lit, without load the earth reads well"},
      .verification = {"voltage_drop_rechecked"}};
}

FailurePattern sunroof_drain() {
  return {.id = "sunroof_drain_blocked",
          .component = "sunroof_drain",
          .failure = "blocked",
          .system = System::kBody,
          .group = ComplaintGroup::kBody,
          .share = 24,
          .symptoms = {{"water_inside", 0.997},
                       {"water_in_footwell", 0.60},
                       {"screen_mists_up", 0.52},
                       {"electrics_odd", 0.25},
                       {"interior_lamp_stays_on", 0.10}},
          .codes = {},
          .conditions = {{"wet", 0.66}, {"overnight", 0.18}, {"after_washing", 0.18}},
          .checks = {{"sunroof_drain_pour", 0.90},
                     {"water_hose_test", 0.35},
                     {"door_drain_look", 0.18},
                     {"cabin_filter_look", 0.15}},
          .earlier = {{{"replace", "door_seal"}, 0.32}, {{"seal", "windscreen_seal"}, 0.26}},
          .signs = {{"sealant_in_excess", 0.30}},
          .families = {{"CM16P", 0.30}, {"EL20H", 0.35}, {"EL20D", 0.35}},
          .mileage = {0.08, 0.25, 0.29, 0.21, 0.11, 0.06},
          .plans = {{{{"clean", "sunroof_drain"}}, 0.82, 0.12, ComebackReason::kSameCause, 1.0, 0},
                    {{{"replace", "sunroof_drain"}}, 0.18, 0.03, ComebackReason::kPart, 2.8, 24}},
          .removals = {"headlining"},
          .found = {"front drain full of needles and grit, cup of water came out inside",
                    "hose of the drain off its spigot behind the lining",
                    "door seal was never the trouble, roof drain blocked"},
          .season = kRain,
          .traps = {"no high air pressure: it blows the hose off its end"},
          .verification = {"wet_test"}};
}

}  // namespace

std::vector<FailurePattern> body_patterns() {
  return {door_latch(), tail_lamp(), sunroof_drain()};
}

}  // namespace shoplore
