// The tables behind demo_world(), one source a group of complaints. See patterns.hpp.
#pragma once

#include <vector>

#include "corpus-demo/patterns.hpp"

namespace shoplore::demo {

[[nodiscard]] std::vector<Pattern> boost_patterns();        // diesel: boost, exhaust, cold start
[[nodiscard]] std::vector<Pattern> misfire_patterns();      // petrol: ignition, mixture, timing
[[nodiscard]] std::vector<Pattern> electrics_patterns();    // drain, charging, earth
[[nodiscard]] std::vector<Pattern> running_gear_patterns(); // wheels, steering, gearbox, heat
[[nodiscard]] std::vector<EngineFamily> demo_families();
[[nodiscard]] std::vector<SymptomHabit> demo_symptom_habits();

}  // namespace shoplore::demo
