#include "tests/query/watch_out/world_rates.hpp"

#include <algorithm>

namespace shoplore::testing {
namespace {

double family_share(const FailurePattern& pattern, std::string_view family) {
  double all = 0;
  for (const EvidenceRate& each : pattern.families) all += each.probability;
  return rate_of(pattern.families, family, 0) / all;
}

double symptom_listed(const World& world, const FailurePattern& pattern, std::string_view id,
                      const Recording& recording) {
  for (const SymptomHabit& habit : world.symptoms) {
    if (habit.id != id) continue;
    return symptom_rate(pattern, habit) *
           listed_rate(pattern, habit, Presence::kPresent, recording);
  }
  return 0;
}

// Either no comeback, or one after some plan, whose fixes are then certain to be there.
double repaired_before(const FailurePattern& pattern, const FixName& fix) {
  const double by_others = earlier_rate(pattern, fix);
  double sum = (1 - comeback_share(pattern)) * by_others;
  for (const FixPlan& plan : pattern.plans) {
    const bool certain = std::find(plan.fixes.begin(), plan.fixes.end(), fix) != plan.fixes.end();
    sum += comeback_share(plan) * (certain ? 1 : by_others);
  }
  return sum;
}

double chance_in(const World& world, const FailurePattern& pattern, const InRecord& what,
                 const Recording& recording) {
  double product = 1;
  for (const std::string_view id : what.symptoms) {
    product *= symptom_listed(world, pattern, id, recording);
  }
  if (!what.codes.empty()) product *= group_rate(world.scanned, pattern.group, 0) * recording.scans;
  for (const std::string_view id : what.codes) product *= rate_of(pattern.codes, id, kStrayCode);
  if (what.asked || what.repair) product *= kEarlierAsked * recording.earlier;
  if (what.repair) product *= repaired_before(pattern, *what.repair);
  if (what.looked || !what.sign.empty()) product *= kWorkLookedFor * recording.signs;
  if (!what.sign.empty()) product *= rate_of(pattern.signs, what.sign, kStraySign);
  return product;
}

}  // namespace

double chance(const World& world, const FailurePattern& pattern, const InRecord& what) {
  double sum = 0;
  for (const Recording& recording : kRecordings) {
    sum += recording.share * chance_in(world, pattern, what, recording);
  }
  return sum * (what.family.empty() ? 1 : family_share(pattern, what.family));
}

std::vector<double> joint(const World& world, const InRecord& what) {
  std::vector<double> out;
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    out.push_back(prior_of(world, i) * chance(world, world.patterns[i], what));
  }
  return out;
}

double fail_chance(const World& world, const FailurePattern& pattern, const CheckHabit& check) {
  double done = 0;
  for (const EngineFamily& family : world.families) {
    done += family_share(pattern, family.id) * done_rate(check, pattern.group, family);
  }
  double recorded = 0;
  for (const Recording& recording : kRecordings) recorded += recording.share * recording.checks;
  return done * recorded * (1 - kCheckUnclear) * rate_of(pattern.checks, check.id, kStrayCheckFail);
}

}  // namespace shoplore::testing
