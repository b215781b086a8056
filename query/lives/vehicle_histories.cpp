#include "query/lives/vehicle_histories.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "indexer/case_json.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool was_here(CaseState state) {
  return state != CaseState::kEnquiry && state != CaseState::kWithdrawn;
}

std::vector<std::string> present_symptoms(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> ids;
  for (const Symptom& symptom : record.symptoms) {
    if (symptom.state != Presence::kPresent) continue;
    ids.emplace_back(vocabulary.canonical(EntryKind::kSymptom, symptom.id));
  }
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  return ids;
}

// Takes what the record says of the vehicle; later visits know better than earlier ones.
void describe(VehicleHistory& history, const Vehicle& vehicle) {
  if (!vehicle.make.empty()) history.make = lower_case(vehicle.make);
  if (!vehicle.engine_family.empty()) history.engine_family = lower_case(vehicle.engine_family);
  if (vehicle.model_year) history.model_year = vehicle.model_year;
}

void put_in_order(std::vector<PastVisit>& visits) {
  std::sort(visits.begin(), visits.end(), [](const PastVisit& a, const PastVisit& b) {
    return std::tie(a.opened, a.id) < std::tie(b.opened, b.id);
  });
}

void take_visit(VehicleHistory& history, CaseId id, const Case& record,
                const Vocabulary& vocabulary) {
  describe(history, record.vehicle);
  history.visits.push_back(past_visit(id, record, vocabulary));
}

}  // namespace

PastVisit past_visit(CaseId id, const Case& record, const Vocabulary& vocabulary) {
  PastVisit visit;
  visit.id = id;
  visit.ref = record.ref;
  visit.state = record.state;
  if (record.visit) visit.kind = record.visit->kind;
  visit.opened = record.opened;
  visit.closed = record.closed;
  visit.km = record.vehicle.mileage_km;
  visit.symptoms = present_symptoms(record, vocabulary);
  for (const Code& code : record.codes) visit.codes.push_back(code.code);
  std::sort(visit.codes.begin(), visit.codes.end());
  visit.codes.erase(std::unique(visit.codes.begin(), visit.codes.end()), visit.codes.end());
  if (record.cause) visit.cause = cause_key(*record.cause, vocabulary);
  for (const auto* causes : {&record.contributing, &record.also_found}) {
    for (const Cause& each : *causes) visit.other_causes.push_back(cause_key(each, vocabulary));
  }
  visit.fixes = fix_keys(record, vocabulary);
  visit.outcome = record.outcome;
  visit.follows = record.follows;
  return visit;
}

Result<std::vector<VehicleHistory>> vehicle_histories(const Store& store,
                                                      const Vocabulary& vocabulary) {
  std::map<std::string, VehicleHistory> by_token;
  std::vector<VehicleHistory> nameless;
  auto read = store.for_each_latest([&](const Change& change) -> Result<void> {
    const auto record = case_from_json(change.body);
    if (!record) return fail(record.error());
    if (!was_here(record->state)) return {};
    const std::string& token = record->vehicle.token;
    VehicleHistory& history = token.empty() ? nameless.emplace_back() : by_token[token];
    history.token = token;
    take_visit(history, change.id, *record, vocabulary);
    return {};
  });
  if (!read) return fail(read.error());
  std::vector<VehicleHistory> all;
  all.reserve(by_token.size() + nameless.size());
  for (auto& [token, history] : by_token) {
    put_in_order(history.visits);
    all.push_back(std::move(history));
  }
  std::move(nameless.begin(), nameless.end(), std::back_inserter(all));
  return all;
}

Result<std::vector<VehicleHistory>> histories_with_cause(const Store& store,
                                                         const Vocabulary& vocabulary,
                                                         std::string_view cause_key) {
  const CauseParts cause = cause_parts(cause_key);
  CaseListFilter filter;
  filter.states = {CaseState::kClosed};
  filter.components = vocabulary.same_entries(EntryKind::kComponent, cause.component);
  filter.failures = vocabulary.same_entries(EntryKind::kFailure, cause.failure);
  auto records = store.list(filter, {}, std::numeric_limits<std::size_t>::max());
  if (!records) return fail(records.error());
  std::reverse(records->begin(), records->end());  // the list begins with the last recorded
  std::set<std::string> tokens;
  std::vector<VehicleHistory> all, nameless;
  for (const StoredCase& stored : *records) {
    if (!stored.record.vehicle.token.empty()) {
      tokens.insert(stored.record.vehicle.token);
    } else {
      take_visit(nameless.emplace_back(), stored.id, stored.record, vocabulary);
    }
  }
  for (const std::string& token : tokens) {
    auto history = history_of_vehicle(store, vocabulary, token);
    if (!history) return fail(history.error());
    all.push_back(std::move(*history));
  }
  std::move(nameless.begin(), nameless.end(), std::back_inserter(all));
  return all;
}

Result<VehicleHistory> history_of_vehicle(const Store& store, const Vocabulary& vocabulary,
                                          std::string_view token) {
  assert(!token.empty());
  CaseListFilter filter;
  filter.vehicle = token;
  auto records = store.list(filter, {}, std::numeric_limits<std::size_t>::max());
  if (!records) return fail(records.error());
  std::reverse(records->begin(), records->end());  // the list begins with the last recorded
  VehicleHistory history;
  history.token = token;
  for (const StoredCase& stored : *records) {
    if (!was_here(stored.record.state)) continue;
    take_visit(history, stored.id, stored.record, vocabulary);
  }
  if (history.visits.empty()) {
    return fail(ErrorCode::kNotFound, "vehicle", "no visit of this vehicle is on record");
  }
  put_in_order(history.visits);
  return history;
}

}  // namespace shoplore
