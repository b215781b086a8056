// Cases that follow another are found by ref, so that a link also counts where a token was never
// written down. All other later visits are of the same vehicle.
#include "query/outcomes/fix_lives.hpp"

#include <algorithm>
#include <unordered_map>

#include "query/outcomes/same_complaint.hpp"

namespace shoplore {
namespace {

using Followers = std::unordered_map<std::string, const PastVisit*>;  // by the ref followed

// The first case that follows each.
Followers followers_in(const std::vector<VehicleHistory>& histories) {
  Followers followers;
  for (const VehicleHistory& history : histories) {
    for (const PastVisit& visit : history.visits) {
      if (visit.follows.empty()) continue;
      const auto [known, is_new] = followers.try_emplace(visit.follows, &visit);
      if (!is_new && visit.opened < known->second->opened) known->second = &visit;
    }
  }
  return followers;
}

std::chrono::days days_since(const PastVisit& fixed, Date day) {
  return std::max(day.days - fixed.done().days, std::chrono::days{0});
}

std::optional<Kilometres> km_since(const PastVisit& fixed, std::optional<Kilometres> then) {
  if (!fixed.km || !then || *then < *fixed.km) return std::nullopt;
  return Kilometres{then->value - fixed.km->value};
}

bool is_unrelated(const Outcome& outcome) {
  return outcome.status == OutcomeStatus::kCameBack && outcome.reason == ComebackReason::kUnrelated;
}

bool has_ended(const PastVisit& fixed, const PastVisit* follower) {
  if (fixed.outcome && is_unrelated(*fixed.outcome)) return false;
  const bool recorded = fixed.outcome && fixed.outcome->status == OutcomeStatus::kCameBack;
  return recorded || follower != nullptr;
}

void end_life(FixLife& life, const PastVisit& fixed, const PastVisit* follower) {
  life.end = FixEnd::kCameBack;
  life.heard_from = HeardFrom::kLaterVisit;
  std::optional<Date> day;
  std::optional<Kilometres> km;
  if (fixed.outcome && fixed.outcome->status == OutcomeStatus::kCameBack) {
    life.heard_from = HeardFrom::kRecordedOutcome;
    life.reason = fixed.outcome->reason;
    day = fixed.outcome->as_of;
    km = fixed.outcome->mileage_km;
  }
  if (!day && follower != nullptr) day = follower->opened;
  if (!km && follower != nullptr) km = follower->km;
  if (day) life.days = days_since(fixed, *day);
  life.km = km_since(fixed, km);
}

// Takes that the fix still held on a day; what was seen later and further counts.
void saw_it_fixed(FixLife& life, const PastVisit& fixed, HeardFrom from, std::optional<Date> day,
                  std::optional<Kilometres> km) {
  life.end = FixEnd::kStillFixed;
  const auto days = day ? std::optional(days_since(fixed, *day)) : std::nullopt;
  if (life.heard_from == HeardFrom::kNothing || days > life.days) life.heard_from = from;
  life.days = std::max(life.days, days);
  life.km = std::max(life.km, km_since(fixed, km));
}

// Requires: `fixed` is among the history's visits.
void watch_life(FixLife& life, const PastVisit& fixed, const PastVisit* follower,
                const VehicleHistory& history) {
  std::optional<Date> vouched_until;
  if (fixed.outcome && fixed.outcome->status != OutcomeStatus::kUnknown) {
    const Outcome& outcome = *fixed.outcome;
    vouched_until = outcome.as_of;
    if (!vouched_until && follower != nullptr) vouched_until = follower->opened;
    saw_it_fixed(life, fixed, HeardFrom::kRecordedOutcome, vouched_until, outcome.mileage_km);
  }
  for (const PastVisit& later : history.visits) {
    if (later.opened <= fixed.done()) continue;
    saw_it_fixed(life, fixed, HeardFrom::kLaterVisit, later.opened, later.km);
    const bool vouched = vouched_until && later.opened <= *vouched_until;
    if (!vouched && same_complaint(fixed, later) != SameComplaint::kNo) return;
  }
  if (life.end == FixEnd::kNotHeardOf && fixed.outcome) life.asked = fixed.outcome->as_of;
}

FixLife life_of(const PastVisit& fixed, const VehicleHistory& history, const PastVisit* follower) {
  FixLife life;
  life.id = fixed.id;
  life.ref = fixed.ref;
  life.vehicle = history.token;
  life.make = history.make;
  life.engine_family = history.engine_family;
  life.cause = fixed.cause;
  life.fixes = fixed.fixes;
  life.done = fixed.done();
  if (has_ended(fixed, follower)) {
    end_life(life, fixed, follower);
  } else {
    watch_life(life, fixed, follower, history);
  }
  return life;
}

}  // namespace

std::vector<FixLife> fix_lives(const std::vector<VehicleHistory>& histories) {
  const Followers followers = followers_in(histories);
  std::vector<FixLife> lives;
  for (const VehicleHistory& history : histories) {
    for (const PastVisit& visit : history.visits) {
      if (visit.state != CaseState::kClosed || visit.fixes.empty()) continue;
      const auto follower = followers.find(visit.ref);
      lives.push_back(
          life_of(visit, history, follower == followers.end() ? nullptr : follower->second));
    }
  }
  return lives;
}

}  // namespace shoplore
