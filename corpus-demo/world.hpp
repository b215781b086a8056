// The invented workshop's world: all patterns, the vehicles they befall, and what is written down.
//
// Given its pattern (the cause), every piece of evidence of a case is drawn independently with the
// probabilities below, so the exact probability of each pattern given a recorded case can be
// computed (truth.hpp). What a pattern does not list has the world's base rate.
// Plain immutable values, any thread.
//
// | evidence        | recorded               | value given the pattern                    |
// |-----------------|------------------------|--------------------------------------------|
// | symptom         | SymptomHabit, by group | present: .symptoms, else the habit's base  |
// | codes           | scanned, by group      | each: .codes, else kStrayCode              |
// | check           | by group and vehicle   | fail: .checks, else kStrayCheckFail        |
// | earlier repairs | kEarlierAsked          | each: .earlier, else kStrayEarlier         |
// | work signs      | kWorkLookedFor         | each: .signs, else kStraySign              |
// | condition       | with a present symptom | each: .conditions, else kStrayCondition    |
// | vehicle         | k...Recorded           | engine family: .families; the rest follows |
// | mileage         | kMileageRecorded       | band: .mileage, uniform inside             |
// | facts           | kFactRecorded, each    | one value: .facts, else World::facts       |
// Recording thins all of it out in some cases. A comeback carries the fix that failed as an earlier
// repair by this workshop; see FixPlan. The month of opening follows .season and is no evidence:
// given the pattern it says nothing about the rest.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "corpus-demo/patterns.hpp"

namespace shoplore {

inline constexpr double kListedIfPresent = 0.92;  // a symptom outside its own groups
inline constexpr double kStrayCode = 0.001;
inline constexpr double kStrayCheckDone = 0.001, kStrayCheckFail = 0.08;
inline constexpr double kCheckUnclear = 0.05;  // of checks done, whatever the cause
inline constexpr double kEarlierAsked = 0.85, kStrayEarlier = 0.001;
inline constexpr double kWorkLookedFor = 0.40, kStraySign = 0.003;
inline constexpr double kStrayCondition = 0.001;
inline constexpr double kMileageRecorded = 0.95;
inline constexpr double kFactRecorded = 0.30;
inline constexpr double kFamilyRecorded = 0.96, kModelRecorded = 0.97, kFuelRecorded = 0.90;

// How fully a case is written up. A busy day leaves thin records: the complaint, the vehicle and
// little else. Independent of the cause; each factor multiplies the rates of its kind.
struct Recording {
  double share = 1;      // of all cases
  double follow_up = 1;  // symptoms asked about less than kMainComplaint
  double scans = 1, checks = 1, earlier = 1, signs = 1;
};
inline constexpr double kMainComplaint = 0.9;
inline constexpr std::array<Recording, 2> kRecordings{
    {{0.40, 1, 1, 1, 1, 1}, {0.60, 0.05, 0.20, 0.15, 0.5, 0.1}}};
struct GroupRate {
  ComplaintGroup group = ComplaintGroup::kPower;
  double probability = 0;
};

// When a symptom is written down. In its own groups it is asked about, and then listed whether
// present or absent; elsewhere it is listed if present, seldom if absent.
struct SymptomHabit {
  std::string_view id;
  double base = 0.01;  // present in patterns that do not list it
  std::vector<ComplaintGroup> asked_in;
  double asked = 0;             // in those groups
  double absent_elsewhere = 0;  // listed as absent in every other group
};

// Which way a bad reading lies from the expected range. Some bad resistances read OL.
enum class BadReading { kHigh, kLow, kOpenCircuit };

// Which vehicles a check can be done on: nobody swaps coils on a diesel.
enum class Suits { kAll, kSpark, kDiesel, kAlternator, kElectrified, kManual, kAutomatic };

// When a check is done: the workshop goes by the complaint, since it does not know the cause.
struct CheckHabit {
  std::string_view id;
  std::vector<GroupRate> done;
  BadReading bad = BadReading::kHigh;
  Suits suits = Suits::kAll;
};

struct EngineFamily {
  std::string_view id, make;
  Fuel fuel = Fuel::kPetrol;
  Transmission transmission = Transmission::kManual;
  int first_year = 2008;
  std::vector<std::string_view> models;  // each as likely
};

// The world, in a fixed order; lists hold every id some pattern names.
struct World {
  std::vector<FailurePattern> patterns;
  std::vector<EngineFamily> families;
  std::vector<SymptomHabit> symptoms;
  std::vector<CheckHabit> checks;
  std::vector<GroupRate> scanned;
  std::vector<FactRates> facts;
  std::vector<std::string_view> codes, conditions, signs;
  std::vector<FixName> earlier;
};

[[nodiscard]] World demo_world();

// True share of the pattern among all closed cases, comebacks included; they add to 1.
[[nodiscard]] double prior_of(const World& world, std::size_t pattern);

// Rates with the world's base rate where the pattern is silent.
[[nodiscard]] double symptom_rate(const FailurePattern& pattern, const SymptomHabit& habit);
[[nodiscard]] double listed_rate(const FailurePattern& pattern, const SymptomHabit& habit,
                                 Presence state, const Recording& recording);
[[nodiscard]] double group_rate(const std::vector<GroupRate>& rates, ComplaintGroup group,
                                double base);
[[nodiscard]] double earlier_rate(const FailurePattern& pattern, const FixName& fix);

// The pattern's own shares of that fact, else the world's. Requires: the world has that fact.
[[nodiscard]] const std::vector<EvidenceRate>& fact_rates(const World& world,
                                                          const FailurePattern& pattern,
                                                          std::string_view name);

// Chance that the check is done on such a vehicle with a complaint of that group; 0 where it does
// not suit it. Hybrids have a spark, no alternator.
[[nodiscard]] double done_rate(const CheckHabit& habit, ComplaintGroup group,
                               const EngineFamily& family);

// Chance of a vehicle with that family, mileage band and these facts among those the pattern
// befalls; `facts` are numbers of values, in the order of World::facts.
[[nodiscard]] double vehicle_rate(const World& world, const FailurePattern& pattern,
                                  std::size_t family, std::size_t band,
                                  const std::vector<std::size_t>& facts);

}  // namespace shoplore
