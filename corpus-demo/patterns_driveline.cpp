// Gearbox, clutch and shafts: shudders and rattles.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewClutch{"replace", "clutch"};
constexpr FixName kNewFlywheel{"replace", "dual_mass_flywheel"};

FailurePattern converter_shudder() {
  return {
      .id = "gearbox_fluid_degraded",
      .component = "gearbox_fluid",
      .failure = "degraded",
      .system = System::kDriveline,
      .group = ComplaintGroup::kDriveline,
      .share = 36,
      .symptoms = {{"shudder_on_light_throttle", 0.997},
                   {"harsh_shift", 0.36},
                   {"slipping_gearbox", 0.20},
                   {"hesitation", 0.25}},
      .codes = {{"P0741", 0.46}, {"P0700", 0.34}},
      .conditions = {{"light_throttle", 0.60}, {"hot", 0.25}},
      .checks = {{"lock_up_slip_live", 0.86},
                 {"gearbox_fluid_look", 0.80},
                 {"misfire_counter", 0.05}},
      .earlier = {{{"replace", "spark_plug"}, 0.14}, {{"reprogram", "control_unit"}, 0.12}},
      .signs = {},
      .families = {{"EL20D", 0.35}, {"BW20D", 0.40}, {"CM16P", 0.25}},
      .mileage = {0.01, 0.16, 0.34, 0.28, 0.14, 0.07},
      .plans =
          {{{{"change_fluid", "gearbox_fluid"}}, 0.84, 0.12, ComebackReason::kSameCause, 2, 130},
           {{{"replace", "torque_converter"}, {"change_fluid", "gearbox_fluid"}},
            0.16,
            0.03,
            ComebackReason::kPart,
            8,
            640}},
      .removals = {"undertray", "gearbox_pan"},
      .found = {"fluid dark and burnt, shudder gone after two changes",
                "slip swings while it shudders, fluid never changed"},
      .facts = {much_idling_and_short_trips()},
      .traps = {"level is set at temperature, engine running",
                "magnet in the pan: fuzz is normal, chips are not"},
      .verification = {"motorway_road_test"}};
}

FailurePattern cv_joint() {
  return {.id = "cv_joint_worn",
          .component = "cv_joint",
          .failure = "worn",
          .system = System::kDriveline,
          .group = ComplaintGroup::kDriveline,
          .share = 28,
          .symptoms = {{"cv_click_on_lock", 0.997},
                       {"clunk_on_take_up", 0.40},
                       {"driveline_vibration", 0.28},
                       {"wheel_hum", 0.08}},
          .codes = {},
          .conditions = {{"full_lock", 0.58}, {"accelerating", 0.30}},
          .checks = {{"cv_boot_look", 0.86},
                     {"prop_joint_look", 0.10},
                     {"gearbox_fluid_look", 0.08},
                     {"lock_up_slip_live", 0.05}},
          .earlier = {{{"replace", "cv_boot"}, 0.36}, {{"replace", "wheel_bearing"}, 0.14}},
          .signs = {{"new_part_fitted", 0.18}},
          .families = {{"AL15D", 0.30}, {"CM14P", 0.30}, {"BW16D", 0.20}, {"EL14P", 0.20}},
          .mileage = weibull_bands(2.6, 180),
          .plans = {{{{"replace", "drive_shaft"}}, 0.50, 0.03, ComebackReason::kPart, 1.8, 140},
                    {{{"replace", "cv_joint"}}, 0.42, 0.05, ComebackReason::kWorkmanship, 2.0, 75},
                    {{{"replace", "cv_boot"}}, 0.08, 0.90, ComebackReason::kSameCause, 1.6, 22}},
          .removals = {"wheel", "drive_shaft_out"},
          .found = {"boot torn long ago, grease gone and sand in the joint",
                    "outer joint has worn tracks, clicks on full lock"},
          .traps = {"new boot on a dry joint comes back"},
          .verification = {"road_test"},
          .contributing = {{"cv_boot", "split"}}};
}

FailurePattern flywheel() {
  return {
      .id = "dual_mass_flywheel_worn",
      .component = "dual_mass_flywheel",
      .failure = "worn",
      .system = System::kDriveline,
      .group = ComplaintGroup::kDriveline,
      .share = 30,
      .symptoms = {{"flywheel_rattle", 0.997},
                   {"clutch_judders", 0.48},
                   {"engine_vibrates_at_idle", 0.52},
                   {"shudder_on_take_off", 0.30},
                   {"clunk_on_take_up", 0.15}},
      .codes = {{"P0300", 0.08}, {"P0335", 0.06}},
      .conditions = {{"idle", 0.42}, {"pulling_away", 0.34}},
      .checks = {{"flywheel_play", 0.90},
                 {"clutch_bite_test", 0.40},
                 {"misfire_counter", 0.22},
                 {"gearbox_fluid_look", 0.06}},
      .earlier = {{{"replace", "engine_mount"}, 0.34}, {kNewClutch, 0.22}},
      .signs = {{"new_part_fitted", 0.22}},
      .families = {{"AL20D", 0.30}, {"CM18D", 0.30}, {"BW16D", 0.20}, {"DM20D", 0.20}},
      .mileage = weibull_bands(2.8, 185),
      .plans = {{{kNewFlywheel, kNewClutch}, 0.84, 0.04, ComebackReason::kPart, 6.5, 620},
                {{kNewClutch}, 0.16, 0.75, ComebackReason::kSameCause, 5.5, 240}},
      .removals = {"gearbox_out", "undertray"},
      .found = {"flywheel has twice the free play it may have, rattles when it stops",
                "springs of the flywheel gone, clutch itself half worn",
                "grease thrown all round the bell housing"},
      .facts = {much_idling_and_short_trips()},
      .traps = {"flywheel bolts once only", "gearbox is heavy: support it before the last bolt"},
      .verification = {"road_test"}};
}

}  // namespace

std::vector<FailurePattern> driveline_patterns() {
  return {converter_shudder(), cv_joint(), flywheel()};
}

}  // namespace shoplore
