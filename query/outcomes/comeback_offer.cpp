#include "query/outcomes/comeback_offer.hpp"

#include <algorithm>

#include "indexer/case_keys.hpp"
#include "query/lives/vehicle_histories.hpp"

namespace shoplore {
namespace {

bool may_come_back(const Case& present) {
  const CaseState state = present.state;
  const bool is_case =
      state == CaseState::kOpen || state == CaseState::kWaiting || state == CaseState::kClosed;
  return is_case && present.follows.empty() && !present.vehicle.token.empty();
}

bool was_vouched_for(const PastVisit& earlier, Date day) {
  const auto& outcome = earlier.outcome;
  return outcome && outcome->status == OutcomeStatus::kStayedFixed && outcome->as_of &&
         *outcome->as_of >= day;
}

bool is_followed(const PastVisit& earlier, const VehicleHistory& history) {
  return std::any_of(history.visits.begin(), history.visits.end(),
                     [&](const PastVisit& each) { return each.follows == earlier.ref; });
}

// A second fault of the same visit is no comeback: the earlier case was opened before.
bool is_in_time(const PastVisit& earlier, const PastVisit& present) {
  return earlier.opened < present.opened && earlier.done() <= present.opened &&
         present.opened.days - earlier.done().days <= kComebackWindow;
}

bool is_alike(const PastVisit& earlier, const PastVisit& present) {
  const bool same_cause = !present.cause.empty() && present.cause == earlier.cause;
  return same_cause || !shared_findings(earlier, present).empty();
}

ComebackOffer offer_of(const PastVisit& earlier, const PastVisit& present) {
  ComebackOffer offer;
  offer.ref = earlier.ref;
  offer.done = earlier.done();
  offer.since = present.opened.days - earlier.done().days;
  if (earlier.km && present.km && *earlier.km <= *present.km) {
    offer.km_since = Kilometres{present.km->value - earlier.km->value};
  }
  offer.cause = earlier.cause;
  offer.fixes = earlier.fixes;
  offer.shared = shared_findings(earlier, present);
  offer.possible = possible_reasons(earlier, present);
  return offer;
}

bool works_on(const PastVisit& visit, const std::string& component) {
  return std::any_of(visit.fixes.begin(), visit.fixes.end(),
                     [&](const std::string& fix) { return fix_parts(fix).component == component; });
}

}  // namespace

Result<std::vector<ComebackOffer>> comeback_offers(const Case& present, const Store& store,
                                                   const Vocabulary& vocabulary) {
  std::vector<ComebackOffer> offers;
  if (!may_come_back(present)) return offers;
  const auto history = history_of_vehicle(store, vocabulary, present.vehicle.token);
  if (!history && history.error().code == ErrorCode::kNotFound) return offers;
  if (!history) return fail(history.error());
  const PastVisit now = past_visit({}, present, vocabulary);
  for (const PastVisit& earlier : history->visits) {
    if (may_be_comeback(earlier, now, *history)) offers.push_back(offer_of(earlier, now));
  }
  std::stable_sort(offers.begin(), offers.end(),
                   [](const ComebackOffer& a, const ComebackOffer& b) { return a.done > b.done; });
  return offers;
}

bool may_be_comeback(const PastVisit& earlier, const PastVisit& present,
                     const VehicleHistory& history) {
  const bool is_past = earlier.state == CaseState::kClosed && earlier.ref != present.ref;
  return is_past && is_in_time(earlier, present) && is_alike(earlier, present) &&
         !is_followed(earlier, history) && !was_vouched_for(earlier, present.opened);
}

std::vector<ComebackReason> possible_reasons(const PastVisit& earlier, const PastVisit& present) {
  using enum ComebackReason;
  if (present.cause.empty()) return {kSameCause, kWrongCause, kPart, kWorkmanship, kUnrelated};
  if (present.cause == earlier.cause) return {kSameCause, kPart, kWorkmanship};
  if (works_on(earlier, cause_parts(present.cause).component)) {
    return {kWrongCause, kPart, kWorkmanship, kUnrelated};
  }
  return {kWrongCause, kWorkmanship, kUnrelated};
}

}  // namespace shoplore
