// The invented workshop's world: failure patterns with their true rates, as data.
//
// Given its pattern (the cause), every piece of evidence of a case is drawn independently with the
// probabilities below, so the exact probability of each pattern given a recorded case can be
// computed (truth.hpp). What a pattern does not list has the world's base rate.
// Plain immutable values, any thread. No vehicle here exists; rates are invented, but true to the
// physics and the trade: a wastegate seized open costs boost, seized shut would give too much.
//
// | evidence        | recorded                               | value given the pattern            |
// |-----------------|----------------------------------------|------------------------------------|
// | symptom         | kListedIfPresent; SymptomHabit if not  | present: symptoms, else .base      |
// | codes           | scanned as a whole                     | each: codes, else kStrayCode       |
// | check           | done: checks, else kStrayCheckDone     | fail: checks, else kStrayCheckFail |
// | earlier repairs | kEarlierAsked, as a whole              | each: earlier, else kStrayEarlier  |
// | work signs      | kWorkLookedFor, as a whole             | each: signs, else kStraySign       |
// | condition       | with a listed present symptom          | each: conditions, else kStrayCondition |
// | engine family   | see recorded_* ; make, model, fuel, gearbox follow from it | families       |
// | mileage         | kMileageRecorded                       | band: mileage, uniform inside      |
// A comeback carries the fix that failed as an earlier repair by this workshop; see FixPlan.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"

namespace shoplore::demo {

inline constexpr double kListedIfPresent = 0.92;
inline constexpr double kStrayCode = 0.004;
inline constexpr double kStrayCheckDone = 0.003, kStrayCheckFail = 0.08;
inline constexpr double kCheckUnclear = 0.05;  // of checks done, whatever the cause
inline constexpr double kEarlierAsked = 0.85, kStrayEarlier = 0.004;
inline constexpr double kWorkLookedFor = 0.40, kStraySign = 0.01;
inline constexpr double kStrayCondition = 0.003;
inline constexpr double kMileageRecorded = 0.95;
inline constexpr double kFamilyRecorded = 0.96, kModelRecorded = 0.97, kFuelRecorded = 0.90;

// Which questions belong to a complaint.
enum class Group { kBoost, kMisfire, kElectrics, kWheels, kCabin, kGearbox };

struct Rate {
  std::string_view id;
  double probability = 0;
};

// Of cases with the pattern: how often the check was done, and failed when it was done and clear.
struct CheckRate {
  std::string_view id;
  double done = 0, fail = 0;
};

struct FixName {
  std::string_view action, component;
  friend bool operator==(const FixName&, const FixName&) = default;
};

struct EarlierRate {
  FixName fix;
  double probability = 0;  // done elsewhere or by the owner
};

// One way of putting the pattern right. It comes back with `comes_back`; then a case follows in
// which these fixes are earlier repairs by this workshop.
struct FixPlan {
  std::vector<FixName> fixes;
  double share = 1;  // of the pattern's cases
  double comes_back = 0;
  ComebackReason reason = ComebackReason::kSameCause;
  double hours = 1, cost = 50;  // clocked; parts in euro
};

// Half-open bands of 50 thousand km from 0; the last, from 250, runs to 330.
using BandWeights = std::array<double, 6>;

struct Pattern {
  std::string_view id;
  std::string_view component, failure;
  Group group = Group::kBoost;
  double share = 0;    // of all cases, before normalising
  double scanned = 0;  // codes were read
  std::vector<Rate> symptoms, codes, conditions;
  std::vector<CheckRate> checks;
  std::vector<EarlierRate> earlier;
  std::vector<Rate> signs;
  std::vector<Rate> families;  // weights
  BandWeights mileage{};
  std::vector<FixPlan> plans;
  std::vector<std::string_view> removals;
  std::vector<std::string_view> found;  // how the notes tell it
};

// How often an absent symptom is written down: it is asked about in its own groups.
struct SymptomHabit {
  std::string_view id;
  double base = 0.01;            // present in patterns that do not list it
  std::vector<Group> asked_in;   // empty: nowhere in particular
  double absent_if_asked = 0;    // listed as absent there
  double absent_elsewhere = 0;   // and in every other group
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
  std::vector<Pattern> patterns;
  std::vector<EngineFamily> families;
  std::vector<SymptomHabit> symptoms;
  std::vector<std::string_view> codes, conditions, checks, signs;
  std::vector<FixName> earlier;
};

[[nodiscard]] World demo_world();

// True share of the pattern among all closed cases, comebacks included; they add to 1.
[[nodiscard]] double prior(const World& world, std::size_t pattern);

// Share of the pattern's cases that are comebacks after this plan: share x comes_back. Horizon
// effects (a comeback after the last day is not in the records) are left out.
[[nodiscard]] double comeback_share(const FixPlan& plan);
[[nodiscard]] double comeback_share(const Pattern& pattern);

// Rates with the world's base rate where the pattern is silent.
[[nodiscard]] double symptom_rate(const Pattern& pattern, const SymptomHabit& habit);
[[nodiscard]] double absent_listed(const Pattern& pattern, const SymptomHabit& habit);
[[nodiscard]] double rate_of(const std::vector<Rate>& rates, std::string_view id, double base);
[[nodiscard]] CheckRate check_rate(const Pattern& pattern, std::string_view id);
[[nodiscard]] double earlier_rate(const Pattern& pattern, const FixName& fix);

}  // namespace shoplore::demo
