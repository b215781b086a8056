// A way in which vehicles of the invented workshop fail, with its true rates, as data.
//
// What a pattern does not list has the world's base rate; how evidence is drawn from it and what
// is written down is world.hpp's. Rates are invented, but true to the physics and the trade: a
// wastegate seized open costs boost, seized shut would give too much. No vehicle here exists.
// Plain immutable values, any thread.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"

namespace shoplore {

// Which part of the vehicle failed; boost is counted with the engine.
enum class System {
  kEngine,
  kFuel,
  kIgnition,
  kCharging,
  kCooling,
  kExhaust,
  kDriveline,
  kBrakes,
  kSteering,
  kSuspension,
  kBody,
  kClimate,
  kNetworks
};

template <>
inline constexpr EnumTable<System, 13> kEnumNames<System>{{{System::kEngine, "engine"},
                                                           {System::kFuel, "fuel"},
                                                           {System::kIgnition, "ignition"},
                                                           {System::kCharging, "charging"},
                                                           {System::kCooling, "cooling"},
                                                           {System::kExhaust, "exhaust"},
                                                           {System::kDriveline, "driveline"},
                                                           {System::kBrakes, "brakes"},
                                                           {System::kSteering, "steering"},
                                                           {System::kSuspension, "suspension"},
                                                           {System::kBody, "body"},
                                                           {System::kClimate, "climate"},
                                                           {System::kNetworks, "networks"}}};

// Which questions belong to a complaint: what the customer feels, not what failed.
enum class ComplaintGroup {
  kPower,
  kRunning,
  kElectrics,
  kWheels,
  kDriveline,
  kCabin,
  kCooling,
  kExhaust,
  kBrakes,
  kChassis,
  kBody
};

struct EvidenceRate {
  std::string_view id;
  double probability = 0;
};

struct FixName {
  std::string_view action, component;
  friend bool operator==(const FixName&, const FixName&) = default;
};

struct EarlierRate {
  FixName fix;
  double probability = 0;  // done elsewhere or by the owner
};

// What the workshop knows of how a vehicle lives: the shares of each value add to 1.
struct FactRates {
  std::string_view name;
  std::vector<EvidenceRate> values;
};

struct CauseName {
  std::string_view component, failure;
};

// Relative frequency of opening by month, January first; only the proportions count.
using Season = std::array<double, 12>;
inline constexpr Season kAllYear{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};

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
inline constexpr std::int64_t kBandKm = 50'000, kBandCount = 6;
using BandWeights = std::array<double, kBandCount>;

// Shares of the bands of a Weibull life cut off at 330,000 km, F(x) = 1 - exp(-(x / scale)^shape):
// shape below 1 early failures, about 1 by chance, above 2 wear (Weibull 1951). They add to 1.
// Requires: shape and scale above 0; scale in thousand km.
[[nodiscard]] BandWeights weibull_bands(double shape, double scale);

struct FailurePattern {
  std::string_view id;
  std::string_view component, failure;
  System system = System::kEngine;
  ComplaintGroup group = ComplaintGroup::kPower;
  double share = 0;  // of all cases, before normalising
  std::vector<EvidenceRate> symptoms, codes, conditions;
  std::vector<EvidenceRate> checks;  // fails, when done and clear
  std::vector<EarlierRate> earlier;
  std::vector<EvidenceRate> signs;
  std::vector<EvidenceRate> families;  // weights
  BandWeights mileage{};
  std::vector<FixPlan> plans;
  std::vector<std::string_view> removals;
  std::vector<std::string_view> found;  // how the notes tell it
  Season season = kAllYear;
  std::vector<FactRates> facts{};                // where they differ from the world's
  std::vector<std::string_view> traps{};         // what to beware of while doing it
  std::vector<std::string_view> verification{};  // besides the road test
  std::vector<CauseName> contributing{};         // what may have helped to bring it about
};

// The rate of that id, else the base.
[[nodiscard]] double rate_of(const std::vector<EvidenceRate>& rates, std::string_view id,
                             double base);

// Share of the pattern's cases that are comebacks after this plan: share x comes_back. Horizon
// effects (a comeback after the last day is not in the records) are left out.
[[nodiscard]] double comeback_share(const FixPlan& plan);
[[nodiscard]] double comeback_share(const FailurePattern& pattern);

}  // namespace shoplore
