#include "corpus-demo/patterns.hpp"

#include <algorithm>

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
  for (auto group :
       {boost_patterns(), misfire_patterns(), electrics_patterns(), running_gear_patterns()}) {
    world.patterns.insert(world.patterns.end(), group.begin(), group.end());
  }
  world.families = demo_families();
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

double comeback_share(const FixPlan& plan) {
  return plan.share * plan.comes_back;
}

double comeback_share(const FailurePattern& pattern) {
  double sum = 0;
  for (const FixPlan& plan : pattern.plans) sum += comeback_share(plan);
  return sum;
}

double rate_of(const std::vector<EvidenceRate>& rates, std::string_view id, double base) {
  for (const EvidenceRate& rate : rates) {
    if (rate.id == id) return rate.probability;
  }
  return base;
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

}  // namespace shoplore
