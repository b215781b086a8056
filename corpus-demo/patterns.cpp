#include "corpus-demo/patterns.hpp"

#include <algorithm>

#include "corpus-demo/pattern_tables.hpp"

namespace shoplore::demo {
namespace {

template <class T>
void add_once(std::vector<T>& list, const T& value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

void add_ids(std::vector<std::string_view>& list, const std::vector<Rate>& rates) {
  for (const Rate& rate : rates) add_once(list, rate.id);
}

// What a comeback carries must be a known earlier repair too.
void add_earlier(std::vector<FixName>& list, const Pattern& pattern) {
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
  for (const Pattern& pattern : world.patterns) {
    add_ids(world.codes, pattern.codes);
    add_ids(world.conditions, pattern.conditions);
    add_ids(world.signs, pattern.signs);
    for (const CheckRate& check : pattern.checks) add_once(world.checks, check.id);
    add_earlier(world.earlier, pattern);
  }
  return world;
}

double prior(const World& world, std::size_t pattern) {
  double total = 0;
  for (const Pattern& each : world.patterns) total += each.share;
  return world.patterns[pattern].share / total;
}

double comeback_share(const FixPlan& plan) { return plan.share * plan.comes_back; }

double comeback_share(const Pattern& pattern) {
  double sum = 0;
  for (const FixPlan& plan : pattern.plans) sum += comeback_share(plan);
  return sum;
}

double rate_of(const std::vector<Rate>& rates, std::string_view id, double base) {
  for (const Rate& rate : rates) {
    if (rate.id == id) return rate.probability;
  }
  return base;
}

double symptom_rate(const Pattern& pattern, const SymptomHabit& habit) {
  return rate_of(pattern.symptoms, habit.id, habit.base);
}

double absent_listed(const Pattern& pattern, const SymptomHabit& habit) {
  const bool asked = std::find(habit.asked_in.begin(), habit.asked_in.end(), pattern.group) !=
                     habit.asked_in.end();
  return asked ? habit.absent_if_asked : habit.absent_elsewhere;
}

CheckRate check_rate(const Pattern& pattern, std::string_view id) {
  for (const CheckRate& rate : pattern.checks) {
    if (rate.id == id) return rate;
  }
  return {id, kStrayCheckDone, kStrayCheckFail};
}

double earlier_rate(const Pattern& pattern, const FixName& fix) {
  for (const EarlierRate& rate : pattern.earlier) {
    if (rate.fix == fix) return rate.probability;
  }
  return kStrayEarlier;
}

}  // namespace shoplore::demo
