// Brakes: rust by the sea, electric vehicles not spared.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewSpeedSensor{"replace", "wheel_speed_sensor"};
constexpr FixName kNewPads{"replace", "brake_pad"};
constexpr FixName kNewDiscs{"replace", "brake_disc"};

FailurePattern tone_ring() {
  return {.id = "abs_tone_ring_corroded",
          .component = "abs_tone_ring",
          .failure = "corroded",
          .system = System::kBrakes,
          .group = ComplaintGroup::kWheels,
          .share = 62,
          .symptoms = {{"abs_cuts_in_slow", 0.997},
                       {"abs_lamp_on", 0.52},
                       {"stability_lamp_on", 0.30},
                       {"brake_noise", 0.12}},
          .codes = {{"C0035", 0.30}, {"C0040", 0.30}, {"C0045", 0.18}, {"C0050", 0.18}},
          .conditions = {{"walking_pace", 0.50}, {"braking", 0.40}},
          .checks = {{"wheel_speed_live", 0.88},
                     {"tone_ring_look", 0.85},
                     {"wheel_spin_listen", 0.08},
                     {"bearing_play", 0.06}},
          .earlier = {{kNewSpeedSensor, 0.42}},
          .signs = {{"new_part_fitted", 0.26}},
          .families =
              {{"AL12P", 0.18}, {"AL15D", 0.22}, {"DM25D", 0.26}, {"CM12P", 0.20}, {"ALE60", 0.14}},
          .mileage = {0.07, 0.24, 0.30, 0.22, 0.12, 0.05},
          .plans = {{{{"replace", "abs_tone_ring"}}, 0.72, 0.04, ComebackReason::kPart, 2, 34},
                    {{{"replace", "drive_shaft"}}, 0.14, 0.02, ComebackReason::kPart, 2.2, 160},
                    {{{"clean", "abs_tone_ring"}}, 0.14, 0.50, ComebackReason::kSameCause, 1, 0}},
          .removals = {"wheel"},
          .found = {"tone ring swollen with rust and cracked",
                    "rust ridges on the ring, signal drops out"},
          .season = kAfterSalt,
          .facts = {kept_by_the_sea()},
          .traps = {"new sensor changes nothing on a rusted ring"},
          .verification = {"brake_test_slow"}};
}

FailurePattern seized_slide() {
  return {
      .id = "caliper_slide_seized",
      .component = "caliper_slide",
      .failure = "seized",
      .system = System::kBrakes,
      .group = ComplaintGroup::kBrakes,
      .share = 36,
      .symptoms = {{"brakes_drag", 0.997},
                   {"wheel_hot", 0.55},
                   {"brakes_pull", 0.45},
                   {"brake_noise", 0.55},
                   {"brake_smell", 0.30},
                   {"brake_pedal_pulses", 0.12}},
      .codes = {},
      .conditions = {{"braking", 0.45}},
      .checks = {{"caliper_slide_look", 0.90},
                 {"brake_pad_measure", 0.72},
                 {"brake_roller", 0.70},
                 {"disc_runout", 0.22},
                 {"disc_thickness", 0.35},
                 {"brake_pipe_look", 0.08}},
      .earlier = {{kNewPads, 0.40}, {kNewDiscs, 0.22}},
      .signs = {{"new_part_fitted", 0.32}},
      .families =
          {{"AL12P", 0.20}, {"CM16P", 0.20}, {"BW18H", 0.20}, {"ALE75", 0.20}, {"ELE55", 0.20}},
      .mileage = weibull_bands(1.6, 150),
      .plans =
          {{{{"free_off", "caliper_slide"}, {"lubricate", "caliper_slide"}, kNewPads},
            0.52,
            0.22,
            ComebackReason::kSameCause,
            1.4,
            48},
           {{{"replace", "brake_caliper"}, kNewPads}, 0.40, 0.03, ComebackReason::kPart, 1.6, 150},
           {{kNewPads}, 0.08, 0.85, ComebackReason::kSameCause, 0.8, 45}},
      .removals = {"wheel", "caliper_off"},
      .found = {"lower pin rusted fast, inner pad down to the plate",
                "one pad nearly new, its partner gone",
                "slides dry and seized, salt under the boots"},
      .season = kAfterSalt,
      .facts = {kept_by_the_sea()},
      .traps = {"hang the caliper on a hook, never by its hose"},
      .verification = {"brake_roller_test"}};
}

FailurePattern rusted_pipe() {
  return {
      .id = "brake_pipe_corroded",
      .component = "brake_pipe",
      .failure = "corroded",
      .system = System::kBrakes,
      .group = ComplaintGroup::kBrakes,
      .share = 30,
      .symptoms = {{"brake_pedal_soft", 0.997},
                   {"brake_fluid_low", 0.66},
                   {"brake_lamp_on", 0.62},
                   {"brake_fluid_leak", 0.40},
                   {"brakes_pull", 0.12}},
      .codes = {},
      .conditions = {{"braking", 0.35}},
      .checks = {{"brake_pipe_look", 0.88},
                 {"master_cylinder_hold", 0.45},
                 {"brake_hose_clamp", 0.25},
                 {"brake_roller", 0.35},
                 {"brake_pad_measure", 0.12}},
      .earlier = {{{"bleed", "brake_fluid"}, 0.36}, {{"replace", "brake_master_cylinder"}, 0.14}},
      .signs = {{"new_part_fitted", 0.12}},
      .families = {{"AL15D", 0.25}, {"DM25D", 0.45}, {"BW14P", 0.30}},
      .mileage = weibull_bands(2.2, 185),
      .plans = {{{{"replace", "brake_pipe"}, {"bleed", "brake_fluid"}},
                 0.92,
                 0.04,
                 ComebackReason::kWorkmanship,
                 2.4,
                 40},
                {{{"bleed", "brake_fluid"}}, 0.08, 0.95, ComebackReason::kWrongCause, 0.6, 8}},
      .removals = {"wheel", "undertray"},
      .found = {"pipe wet above the tank, rust came off with the clip",
                "rear pipe rotten under its sleeve, pedal sinks",
                "weeps at the bracket over the axle"},
      .season = kAfterSalt,
      .facts = {kept_by_the_sea()},
      .traps = {"not to be driven out: brake at a standstill first"},
      .verification = {"brake_roller_test"}};
}

FailurePattern rusted_disc() {
  return {.id = "brake_disc_corroded",
          .component = "brake_disc",
          .failure = "corroded",
          .system = System::kBrakes,
          .group = ComplaintGroup::kBrakes,
          .share = 36,
          .symptoms = {{"brake_pedal_pulses", 0.997},
                       {"brake_noise", 0.72},
                       {"steering_shimmy", 0.32},
                       {"brakes_pull", 0.15},
                       {"vibration_at_speed", 0.10}},
          .codes = {},
          .conditions = {{"braking", 0.45}},
          .checks = {{"disc_runout", 0.82},
                     {"disc_thickness", 0.62},
                     {"brake_roller", 0.52},
                     {"caliper_slide_look", 0.15},
                     {"brake_pad_measure", 0.32}},
          .earlier = {{kNewPads, 0.34}, {{"balance", "wheel"}, 0.26}},
          .signs = {{"new_part_fitted", 0.22}},
          .families =
              {{"AL12P", 0.20}, {"CM16P", 0.20}, {"BW18H", 0.20}, {"ALE75", 0.20}, {"ELE55", 0.20}},
          .mileage = weibull_bands(1.6, 150),
          .plans = {{{kNewDiscs, kNewPads}, 0.88, 0.04, ComebackReason::kWorkmanship, 1.6, 130},
                    {{kNewPads}, 0.12, 0.70, ComebackReason::kSameCause, 0.8, 45}},
          .removals = {"wheel", "caliper_off", "brake_disc_off"},
          .found = {"inner face of the disc all rust, stood too long by the water",
                    "rust rim and a print of the pad on the face",
                    "thickness changes round the disc, hub face rusty under it"},
          .season = kAfterSalt,
          .facts = {kept_by_the_sea()},
          .traps = {"clean the hub face, else the new disc runs out too"},
          .verification = {"brake_roller_test"}};
}

}  // namespace

std::vector<FailurePattern> brake_patterns() {
  return {tone_ring(), seized_slide(), rusted_pipe(), rusted_disc()};
}

}  // namespace shoplore
