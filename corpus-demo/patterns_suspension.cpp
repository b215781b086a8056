// Wheels and suspension: hums and knocks that sound alike.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

constexpr FixName kNewBearing{"replace", "wheel_bearing"};
constexpr FixName kNewTyres{"replace", "tyre"};
constexpr FixName kNewDropLink{"replace", "drop_link"};

FailurePattern wheel_bearing() {
  return {
      .id = "wheel_bearing_worn",
      .component = "wheel_bearing",
      .failure = "worn",
      .system = System::kSuspension,
      .group = ComplaintGroup::kWheels,
      .share = 46,
      .symptoms = {{"wheel_hum", 0.997},
                   {"hum_changes_in_bends", 0.8},
                   {"vibration_at_speed", 0.22},
                   {"abs_lamp_on", 0.18},
                   {"abs_cuts_in_slow", 0.10}},
      .codes = {{"C0035", 0.14}, {"C0040", 0.14}, {"C0045", 0.12}, {"C0050", 0.12}},
      .conditions = {{"motorway", 0.45}, {"in_bends", 0.30}},
      .checks = {{"wheel_spin_listen", 0.84},
                 {"bearing_play", 0.55},
                 {"tyre_look", 0.16},
                 {"wheel_speed_live", 0.28},
                 {"tone_ring_look", 0.08}},
      .earlier = {{kNewTyres, 0.18}, {kNewBearing, 0.08}},
      .signs = {},
      .families =
          {{"AL20D", 0.22}, {"BW20D", 0.24}, {"EL18H", 0.22}, {"DME75", 0.16}, {"CME40", 0.16}},
      .mileage = {0.05, 0.21, 0.30, 0.24, 0.13, 0.07},
      .plans =
          {{{kNewBearing}, 0.84, 0.05, ComebackReason::kWorkmanship, 1.8, 88},
           {{kNewBearing, {"replace", "wheel_hub"}}, 0.16, 0.02, ComebackReason::kPart, 2.2, 150}},
      .removals = {"wheel", "brake_disc_off"},
      .found = {"bearing rough by hand, felt at the spring",
                "bearing growls, play at twelve and six"},
      .facts = {heavy_work()},
      .traps = {"ring side inwards, the magnet ring dies of one knock"},
      .verification = {"motorway_road_test"},
      .contributing = {{"wheel_hub", "bent"}}};
}

FailurePattern tyre_wear() {
  return {.id = "tyre_worn",
          .component = "tyre",
          .failure = "worn",
          .system = System::kSuspension,
          .group = ComplaintGroup::kWheels,
          .share = 46,
          .symptoms = {{"wheel_hum", 0.997},
                       {"vibration_at_speed", 0.46},
                       {"hum_changes_in_bends", 0.08},
                       {"pulls_to_one_side", 0.26},
                       {"steering_wheel_off_centre", 0.12}},
          .codes = {},
          .conditions = {{"motorway", 0.45}, {"in_bends", 0.30}},
          .checks = {{"tyre_look", 0.90},
                     {"wheel_spin_listen", 0.10},
                     {"bearing_play", 0.05},
                     {"alignment_measured", 0.62}},
          .earlier = {{kNewBearing, 0.24}},
          .signs = {},
          .families =
              {{"AL20D", 0.22}, {"BW20D", 0.24}, {"EL18H", 0.22}, {"DME75", 0.16}, {"CME40", 0.16}},
          .mileage = {0.05, 0.21, 0.30, 0.24, 0.13, 0.07},
          .plans = {{{kNewTyres}, 0.55, 0.08, ComebackReason::kSameCause, 0.8, 180},
                    {{kNewTyres, {"align", "track_rod_end"}},
                     0.45,
                     0.02,
                     ComebackReason::kWorkmanship,
                     1.6,
                     200}},
          .removals = {"wheel"},
          .found = {"sawtooth wear on the rear tyres, hum gone with axles swapped",
                    "tyres worn in steps, bearing quiet by hand"},
          .facts = {heavy_work()},
          .traps = {"swap axles first, the hum moves with the tyres"},
          .verification = {"motorway_road_test"},
          .contributing = {{"damper", "worn"}}};
}

FailurePattern ball_joint() {
  return {
      .id = "ball_joint_worn",
      .component = "ball_joint",
      .failure = "worn",
      .system = System::kSuspension,
      .group = ComplaintGroup::kChassis,
      .share = 38,
      .symptoms = {{"clunk_over_bumps", 0.997},
                   {"steering_wanders", 0.44},
                   {"tyre_wear_inner", 0.32},
                   {"knock_from_suspension", 0.40},
                   {"steering_clicks", 0.10},
                   {"creaks_over_bumps", 0.25}},
      .codes = {},
      .conditions = {{"over_bumps", 0.50}},
      .checks = {{"ball_joint_play", 0.84},
                 {"spring_look", 0.06},
                 {"damper_look", 0.12},
                 {"bush_look", 0.25},
                 {"track_rod_play", 0.20},
                 {"steering_play_look", 0.15}},
      .earlier = {{kNewDropLink, 0.42}, {{"replace", "damper"}, 0.14}},
      .signs = {{"new_part_fitted", 0.26}},
      .families = {{"AL15D", 0.25}, {"BW16D", 0.25}, {"CM18D", 0.25}, {"CME65", 0.25}},
      .mileage = weibull_bands(2.0, 165),
      .plans = {{{{"replace", "ball_joint"}}, 0.46, 0.04, ComebackReason::kWorkmanship, 1.2, 35},
                {{{"replace", "suspension_arm"}}, 0.46, 0.02, ComebackReason::kPart, 1.5, 90},
                {{kNewDropLink}, 0.08, 0.90, ComebackReason::kWrongCause, 0.6, 24}},
      .removals = {"wheel"},
      .found = {"play in the lower joint with the weight off, boot torn",
                "knock is the ball joint, links were new already"},
      .facts = {kept_by_the_sea()},
      .traps = {"load and unload the joint: jacked under the arm it hides its play"},
      .verification = {"road_test"}};
}

FailurePattern broken_spring() {
  return {.id = "coil_spring_broken",
          .component = "coil_spring",
          .failure = "broken",
          .system = System::kSuspension,
          .group = ComplaintGroup::kChassis,
          .share = 38,
          .symptoms = {{"clunk_over_bumps", 0.997},
                       {"sits_low_one_corner", 0.85},
                       {"knock_from_suspension", 0.42},
                       {"creaks_over_bumps", 0.30},
                       {"steering_wanders", 0.10}},
          .codes = {},
          .conditions = {{"over_bumps", 0.50}},
          .checks = {{"spring_look", 0.82},
                     {"ride_height_measured", 0.70},
                     {"damper_look", 0.25},
                     {"ball_joint_play", 0.08},
                     {"bush_look", 0.12},
                     {"track_rod_play", 0.05}},
          .earlier = {{kNewDropLink, 0.28}, {{"replace", "top_mount"}, 0.14}},
          .signs = {{"new_part_fitted", 0.16}},
          .families = {{"AL15D", 0.25}, {"BW16D", 0.25}, {"CM18D", 0.25}, {"CME65", 0.25}},
          .mileage = weibull_bands(2.0, 165),
          .plans = {{{{"replace", "coil_spring"}}, 0.84, 0.04, ComebackReason::kPart, 1.6, 70},
                    {{{"replace", "coil_spring"}, {"replace", "top_mount"}},
                     0.16,
                     0.02,
                     ComebackReason::kWorkmanship,
                     2.0,
                     105}},
          .removals = {"wheel", "strut_out"},
          .found = {"last turn of the spring broken off and lying in the cup",
                    "snapped in the cold, sharp end close to the tyre",
                    "break hides behind the seat, only seen with the strut turned"},
          .season = kFrost,
          .facts = {kept_by_the_sea()},
          .traps = {"compressor straight and chained, never a hand inside the coils",
                    "springs in pairs"},
          .verification = {"road_test"}};
}

}  // namespace

std::vector<FailurePattern> suspension_patterns() {
  return {wheel_bearing(), tyre_wear(), ball_joint(), broken_spring()};
}

}  // namespace shoplore
