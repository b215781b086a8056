// The tables behind demo_world(), one source a group of complaints. See patterns.hpp.
#pragma once

#include <vector>

#include "corpus-demo/patterns.hpp"

namespace shoplore {

[[nodiscard]] std::vector<FailurePattern> boost_patterns();    // diesel: boost, exhaust, cold start
[[nodiscard]] std::vector<FailurePattern> misfire_patterns();  // petrol: ignition, mixture, timing
[[nodiscard]] std::vector<FailurePattern> electrics_patterns();  // drain, charging, earth
[[nodiscard]] std::vector<FailurePattern>
running_gear_patterns();  // wheels, steering, gearbox, heat
[[nodiscard]] std::vector<EngineFamily> demo_families();
[[nodiscard]] std::vector<SymptomHabit> demo_symptom_habits();
[[nodiscard]] std::vector<CheckHabit> demo_check_habits();
[[nodiscard]] std::vector<GroupRate> demo_scan_habits();

}  // namespace shoplore
