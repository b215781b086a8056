// The tables behind demo_world(), one source a system. See world.hpp.
#pragma once

#include <vector>

#include "corpus-demo/world.hpp"

namespace shoplore {

[[nodiscard]] std::vector<FailurePattern> boost_patterns();     // turbocharger and charge air
[[nodiscard]] std::vector<FailurePattern> engine_patterns();    // timing, sensors, intake
[[nodiscard]] std::vector<FailurePattern> fuel_patterns();      // tank vent, filter, pump, injector
[[nodiscard]] std::vector<FailurePattern> ignition_patterns();  // spark and glow
[[nodiscard]] std::vector<FailurePattern> charging_patterns();  // batteries, alternator, earth
[[nodiscard]] std::vector<FailurePattern> cooling_patterns();
[[nodiscard]] std::vector<FailurePattern> exhaust_patterns();  // recirculation, filter, dosing
[[nodiscard]] std::vector<FailurePattern> driveline_patterns();
[[nodiscard]] std::vector<FailurePattern> brake_patterns();
[[nodiscard]] std::vector<FailurePattern> steering_patterns();
[[nodiscard]] std::vector<FailurePattern> suspension_patterns();  // wheels too
[[nodiscard]] std::vector<FailurePattern> body_patterns();        // latches, lamps, water
[[nodiscard]] std::vector<FailurePattern> climate_patterns();
[[nodiscard]] std::vector<FailurePattern> network_patterns();  // wires and connectors

[[nodiscard]] std::vector<EngineFamily> demo_families();
[[nodiscard]] std::vector<FactRates> demo_facts();
[[nodiscard]] std::vector<SymptomHabit> demo_symptom_habits();
[[nodiscard]] std::vector<CheckHabit> demo_check_habits();
[[nodiscard]] std::vector<GroupRate> demo_scan_habits();

// Ways to live that bring failures about. Named here so that patterns that are told apart by
// other things share them.
[[nodiscard]] FactRates kept_by_the_sea();
[[nodiscard]] FactRates much_idling_and_short_trips();  // taxi and delivery
[[nodiscard]] FactRates heavy_work();                   // farm and delivery

// Months: frost and dark, heat, rain, and rust that shows after a winter of salt.
inline constexpr Season kFrost{2.2, 1.9, 1.3, 0.7, 0.5, 0.4, 0.4, 0.4, 0.6, 0.9, 1.3, 1.8};
inline constexpr Season kHeat{0.2, 0.2, 0.4, 0.8, 1.5, 2.2, 2.5, 2.1, 1.1, 0.5, 0.3, 0.2};
inline constexpr Season kRain{1.3, 1.1, 0.9, 0.7, 0.6, 0.5, 0.5, 0.6, 1.1, 1.7, 1.8, 1.5};
inline constexpr Season kAfterSalt{1.0, 1.3, 1.7, 1.6, 1.2, 0.9, 0.7, 0.6, 0.7, 0.8, 0.8, 0.9};

}  // namespace shoplore
