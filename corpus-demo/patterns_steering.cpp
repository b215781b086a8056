// Steering.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewSpeedSensor{"replace", "wheel_speed_sensor"};

FailurePattern steering_angle() {
  return {.id = "steering_angle_not_calibrated",
          .component = "steering_angle_sensor",
          .failure = "not_calibrated",
          .system = System::kSteering,
          .group = ComplaintGroup::kWheels,
          .share = 36,
          .symptoms = {{"stability_lamp_on", 0.997},
                       {"assist_cuts_in_bend", 0.40},
                       {"steering_wheel_off_centre", 0.32},
                       {"abs_lamp_on", 0.22},
                       {"pulls_to_one_side", 0.14}},
          .codes = {{"C1210", 0.60}, {"C0051", 0.48}},
          .conditions = {{"after_alignment", 0.64}, {"after_tyres", 0.20}, {"in_bends", 0.22}},
          .checks = {{"steering_angle_live", 0.90},
                     {"alignment_measured", 0.24},
                     {"wheel_speed_live", 0.06},
                     {"tyre_look", 0.15}},
          .earlier = {{{"align", "track_rod_end"}, 0.56}, {kNewSpeedSensor, 0.08}},
          .signs = {{"wheel_alignment_marks", 0.55}, {"battery_disconnected_lately", 0.12}},
          .families = {{"CM18D", 0.25}, {"BW16D", 0.20}, {"EL22D", 0.25}, {"DM18H", 0.30}},
          .mileage = {0.07, 0.24, 0.30, 0.22, 0.12, 0.05},
          .plans = {{{{"calibrate", "steering_angle_sensor"}},
                     0.90,
                     0.04,
                     ComebackReason::kWorkmanship,
                     0.5,
                     0},
                    {{{"replace", "steering_angle_sensor"}, {"calibrate", "steering_angle_sensor"}},
                     0.10,
                     0.03,
                     ComebackReason::kPart,
                     1.4,
                     140}},
          .removals = {},
          .found = {"angle shows nine degrees wheels straight, never zeroed after tracking",
                    "zero point lost at the last alignment"},
          .traps = {"wheels straight on the bench, not by eye"},
          .verification = {"steering_straight_test"}};
}

FailurePattern steering_joint() {
  return {
      .id = "steering_shaft_joint_sticking",
      .component = "steering_shaft_joint",
      .failure = "sticking",
      .system = System::kSteering,
      .group = ComplaintGroup::kChassis,
      .share = 24,
      .symptoms = {{"heavy_steering", 0.997},
                   {"steering_returns_badly", 0.66},
                   {"steering_clicks", 0.42},
                   {"steering_wanders", 0.20}},
      .codes = {{"C0051", 0.08}},
      .conditions = {{"walking_pace", 0.28}, {"wet", 0.15}, {"cold_weather", 0.20}},
      .checks = {{"steering_torque_live", 0.72},
                 {"steering_play_look", 0.62},
                 {"track_rod_play", 0.08},
                 {"ball_joint_play", 0.12}},
      .earlier = {{{"align", "track_rod_end"}, 0.28},
                  {{"replace", "track_rod_end"}, 0.22},
                  {{"replace", "ball_joint"}, 0.16}},
      .signs = {{"wheel_alignment_marks", 0.20}},
      .families = {{"BW20D", 0.30}, {"DM25D", 0.35}, {"CM20D", 0.35}},
      .mileage = weibull_bands(2.2, 180),
      .plans = {{{{"replace", "steering_shaft_joint"}},
                 0.76,
                 0.03,
                 ComebackReason::kWorkmanship,
                 1.8,
                 95},
                {{{"lubricate", "steering_shaft_joint"}},
                 0.24,
                 0.45,
                 ComebackReason::kSameCause,
                 0.6,
                 4}},
      .removals = {"undertray"},
      .found = {"lower joint of the column rusted stiff, wheel hangs where you leave it",
                "joint tight in one plane, frees with oil for a month"},
      .season = kAfterSalt,
      .facts = {kept_by_the_sea()},
      .traps = {"mark the spline before it comes off", "lock the wheel, the clock spring winds up"},
      .verification = {"steering_straight_test"}};
}

}  // namespace

std::vector<FailurePattern> steering_patterns() {
  return {steering_angle(), steering_joint()};
}

}  // namespace shoplore
