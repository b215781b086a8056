#include "corpus-demo/world.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {
namespace {

template <class T>
void add_once(std::vector<T>& list, const T& value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

void add_ids(std::vector<std::string_view>& list, const std::vector<EvidenceRate>& rates) {
  for (const EvidenceRate& rate : rates) add_once(list, rate.id);
}

// What a comeback carries must be a known earlier repair too.
void add_earlier(std::vector<FixName>& list, const FailurePattern& pattern) {
  for (const EarlierRate& rate : pattern.earlier) add_once(list, rate.fix);
  for (const FixPlan& plan : pattern.plans) {
    for (const FixName& fix : plan.fixes) add_once(list, fix);
  }
}

}  // namespace

World demo_world() {
  World world;
  for (auto system :
       {boost_patterns(), engine_patterns(), fuel_patterns(), ignition_patterns(),
        charging_patterns(), cooling_patterns(), exhaust_patterns(), driveline_patterns(),
        brake_patterns(), steering_patterns(), suspension_patterns(), body_patterns(),
        climate_patterns(), network_patterns()}) {
    world.patterns.insert(world.patterns.end(), system.begin(), system.end());
  }
  world.families = demo_families();
  world.facts = demo_facts();
  world.symptoms = demo_symptom_habits();
  world.checks = demo_check_habits();
  world.scanned = demo_scan_habits();
  for (const FailurePattern& pattern : world.patterns) {
    add_ids(world.codes, pattern.codes);
    add_ids(world.conditions, pattern.conditions);
    add_ids(world.signs, pattern.signs);
    add_earlier(world.earlier, pattern);
  }
  return world;
}

double prior_of(const World& world, std::size_t pattern) {
  double total = 0;
  for (const FailurePattern& each : world.patterns) total += each.share;
  return world.patterns[pattern].share / total;
}

double symptom_rate(const FailurePattern& pattern, const SymptomHabit& habit) {
  return rate_of(pattern.symptoms, habit.id, habit.base);
}

double group_rate(const std::vector<GroupRate>& rates, ComplaintGroup group, double base) {
  for (const GroupRate& rate : rates) {
    if (rate.group == group) return rate.probability;
  }
  return base;
}

double listed_rate(const FailurePattern& pattern, const SymptomHabit& habit, Presence state,
                   const Recording& recording) {
  const double factor = habit.asked < kMainComplaint ? recording.follow_up : 1;
  const bool asked = std::find(habit.asked_in.begin(), habit.asked_in.end(), pattern.group) !=
                     habit.asked_in.end();
  if (asked) return habit.asked * factor;
  return state == Presence::kPresent ? kListedIfPresent * factor : habit.absent_elsewhere;
}

double earlier_rate(const FailurePattern& pattern, const FixName& fix) {
  for (const EarlierRate& rate : pattern.earlier) {
    if (rate.fix == fix) return rate.probability;
  }
  return kStrayEarlier;
}

const std::vector<EvidenceRate>& fact_rates(const World& world, const FailurePattern& pattern,
                                            std::string_view name) {
  for (const FactRates& own : pattern.facts) {
    if (own.name == name) return own.values;
  }
  const auto common = std::find_if(world.facts.begin(), world.facts.end(),
                                   [&](const FactRates& fact) { return fact.name == name; });
  assert(common != world.facts.end());
  return common->values;
}

namespace {

bool suits(Suits which, const EngineFamily& family) {
  const bool hybrid = family.fuel == Fuel::kHybrid, electric = family.fuel == Fuel::kElectric;
  switch (which) {
    case Suits::kAll:
      return true;
    case Suits::kSpark:
      return hybrid || family.fuel == Fuel::kPetrol;
    case Suits::kDiesel:
      return family.fuel == Fuel::kDiesel;
    case Suits::kAlternator:
      return !hybrid && !electric;
    case Suits::kElectrified:
      return hybrid || electric;
    case Suits::kManual:
      return family.transmission == Transmission::kManual;
    case Suits::kAutomatic:
      return !electric && family.transmission == Transmission::kAutomatic;
  }
  return true;
}

}  // namespace

double done_rate(const CheckHabit& habit, ComplaintGroup group, const EngineFamily& family) {
  return suits(habit.suits, family) ? group_rate(habit.done, group, kStrayCheckDone) : 0;
}

double vehicle_rate(const World& world, const FailurePattern& pattern, std::size_t family,
                    std::size_t band, const std::vector<std::size_t>& facts) {
  double all = 0;
  for (const EngineFamily& each : world.families) all += rate_of(pattern.families, each.id, 0);
  const double bands = std::accumulate(pattern.mileage.begin(), pattern.mileage.end(), 0.0);
  double rate =
      rate_of(pattern.families, world.families[family].id, 0) / all * pattern.mileage[band] / bands;
  for (std::size_t i = 0; i < world.facts.size(); ++i) {
    rate *= fact_rates(world, pattern, world.facts[i].name)[facts[i]].probability;
  }
  return rate;
}

}  // namespace shoplore
