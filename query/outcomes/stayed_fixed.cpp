#include "query/outcomes/stayed_fixed.hpp"

#include <algorithm>
#include <iterator>
#include <map>

#include "query/lives/kaplan_meier.hpp"
#include "query/lives/mean_cumulative.hpp"

namespace shoplore {
namespace {

double number(std::chrono::days days) {
  return static_cast<double>(days.count());
}
double number(Kilometres km) {
  return static_cast<double>(km.value);
}

// What a life lasted in the measure asked about.
const std::optional<std::chrono::days>& lasted(const FixLife& life, std::chrono::days /*measure*/) {
  return life.days;
}
const std::optional<Kilometres>& lasted(const FixLife& life, Kilometres /*measure*/) {
  return life.km;
}

template <class After>
std::vector<Life> lives_in(std::span<const FixLife> lives) {
  std::vector<Life> measured;
  for (const FixLife& life : lives) {
    const auto& length = lasted(life, After{});
    if (length) measured.push_back({number(*length), life.end == FixEnd::kCameBack});
  }
  return measured;
}

template <class After>
StayedShare<After> counted_at(std::span<const Life> lives, After after) {
  StayedShare<After> share;
  share.after = after;
  for (const Life& life : lives) {
    if (life.failed && life.exit <= number(after)) {
      ++share.came_back;
    } else if (life.exit >= number(after)) {
      ++share.still_watched;
    }
  }
  return share;
}

template <class After, std::size_t count>
std::vector<StayedShare<After>> shares_at(std::span<const FixLife> all,
                                          const std::array<After, count>& shown) {
  const std::vector<Life> lives = lives_in<After>(all);
  std::vector<StayedShare<After>> shares;
  if (lives.empty()) return shares;
  const SurvivalCurve curve = kaplan_meier(lives).value();
  for (const After after : shown) {
    StayedShare<After> share = counted_at(lives, after);
    const std::uint32_t decided = share.came_back + share.still_watched;
    const auto there = survival_at(curve, number(after));
    if (!there || decided < kFewestDecided) continue;
    if (share.still_watched == 0 && there->survival > 0) continue;
    share.share = there->survival;
    share.interval = there->interval.value_or(jeffreys(share.still_watched, decided));
    shares.push_back(share);
  }
  return shares;
}

bool is_km_known_of_enough(std::span<const FixLife> lives) {
  for (const FixEnd end : {FixEnd::kCameBack, FixEnd::kStillFixed}) {
    double heard = 0, known = 0;
    for (const FixLife& life : lives) {
      if (life.end != end) continue;
      heard += 1;
      known += life.km ? 1 : 0;
    }
    if (known < kLeastKmKnown * heard) return false;
  }
  return true;
}

std::vector<ReasonCount> reasons_of(std::span<const FixLife> lives) {
  std::map<std::optional<ComebackReason>, std::uint32_t> counts;
  for (const FixLife& life : lives) {
    if (life.end == FixEnd::kCameBack) ++counts[life.reason];
  }
  std::vector<ReasonCount> reasons;
  for (const auto& [reason, cases] : counts) reasons.push_back({reason, cases});
  std::stable_sort(reasons.begin(), reasons.end(),
                   [](const ReasonCount& a, const ReasonCount& b) { return a.cases > b.cases; });
  return reasons;
}

void count_end(StayedFixed& group, const FixLife& life) {
  ++group.cases;
  switch (life.end) {
    case FixEnd::kCameBack:
      ++group.came_back;
      break;
    case FixEnd::kStillFixed:
      ++group.still_fixed;
      if (life.heard_from == HeardFrom::kLaterVisit) ++group.seen_by_later_visits;
      break;
    case FixEnd::kNotHeardOf:
      ++group.not_heard_of;
      return;
  }
  if (!life.days) ++group.no_day;
}

// A vehicle's time from its first repair on. Requires: `lives` of one vehicle, not empty.
RepairHistory history_of(const std::vector<const FixLife*>& lives) {
  Date first = lives.front()->done;
  for (const FixLife* life : lives) first = std::min(first, life->done);
  RepairHistory history;
  for (const FixLife* life : lives) {
    const double end = number(life->done.days - first.days + *life->days);
    history.exit = std::max(history.exit, end);
    if (life->end == FixEnd::kCameBack) history.events.push_back(end);
  }
  return history;
}

}  // namespace

StayedFixed stayed_fixed(std::span<const FixLife> lives) {
  StayedFixed group;
  for (const FixLife& life : lives) count_end(group, life);
  group.reasons = reasons_of(lives);
  group.by_days = shares_at(lives, kShownDays);
  if (is_km_known_of_enough(lives)) group.by_km = shares_at(lives, kShownKm);
  return group;
}

std::vector<StayedFixed> stayed_fixed_by_fixes(std::span<const FixLife> lives,
                                               std::string_view cause_key) {
  std::map<std::vector<std::string>, std::vector<FixLife>> by_fixes;
  for (const FixLife& life : lives) {
    if (life.cause == cause_key) by_fixes[life.fixes].push_back(life);
  }
  std::vector<StayedFixed> groups;
  for (const auto& [fixes, group] : by_fixes) {
    groups.push_back(stayed_fixed(group));
    groups.back().fixes = fixes;
  }
  std::stable_sort(groups.begin(), groups.end(),
                   [](const StayedFixed& a, const StayedFixed& b) { return a.cases > b.cases; });
  return groups;
}

RepeatComebacks repeat_comebacks(std::span<const FixLife> lives) {
  std::map<std::string, std::vector<const FixLife*>> by_vehicle;
  std::vector<RepairHistory> histories;
  for (const FixLife& life : lives) {
    if (!life.days) continue;
    if (life.vehicle.empty()) {
      histories.push_back(history_of({&life}));
    } else {
      by_vehicle[life.vehicle].push_back(&life);
    }
  }
  for (const auto& [vehicle, own] : by_vehicle) histories.push_back(history_of(own));
  RepeatComebacks repeats;
  repeats.vehicles = static_cast<std::uint32_t>(histories.size());
  if (histories.empty()) return repeats;
  for (const RepairHistory& each : histories) {
    repeats.comebacks += static_cast<std::uint32_t>(each.events.size());
    if (each.events.size() > 1) ++repeats.more_than_once;
  }
  repeats.by_then = repairs_by(mean_cumulative(histories).value(), number(kRepeatDays));
  return repeats;
}

std::vector<FixLife> lives_of_cause(std::span<const FixLife> lives, std::string_view cause_key) {
  std::vector<FixLife> own;
  std::copy_if(lives.begin(), lives.end(), std::back_inserter(own),
               [&](const FixLife& life) { return life.cause == cause_key; });
  return own;
}

}  // namespace shoplore
