// What each vehicle went through here, visit by visit.
//
// Read from the records, not from the index: cases still open, those ended without a cause and
// visits without a complaint are in it, since each shows that the vehicle was here. Enquiries and
// withdrawn records are not. It judges nothing: what a later visit says of an earlier repair is
// for its users.
//
// Plain values. Threads and errors: the store's. Reading everything takes about as long as an
// export; reading one vehicle only touches its own records.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/quantities.hpp"
#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// One record of a vehicle, in the words of today's vocabulary: ids are canonical.
struct PastVisit {
  CaseId id;
  std::string ref;
  CaseState state = CaseState::kClosed;
  VisitKind kind = VisitKind::kComplaint;
  Date opened;
  std::optional<Date> closed;
  std::optional<Kilometres> km;
  std::vector<std::string> symptoms;      // ids of those present, sorted
  std::vector<std::string> codes;         // sorted
  std::string cause;                      // cause key; empty without one
  std::vector<std::string> other_causes;  // cause keys of contributing and also found
  std::vector<std::string> fixes;         // fix keys, sorted
  std::optional<Outcome> outcome;
  std::string follows;  // ref of the case this is a comeback of

  // The day the work was done: closed, else opened.
  [[nodiscard]] Date done() const { return closed.value_or(opened); }
};

struct VehicleHistory {
  std::string token;                // empty: not known to be the same as any other
  std::string make, engine_family;  // in lower case, as last written down; may be empty
  std::optional<int> model_year;    // likewise
  std::vector<PastVisit> visits;    // by day opened, then as recorded; never empty
};

// The record as one of its vehicle's visits.
[[nodiscard]] PastVisit past_visit(CaseId id, const Case& record, const Vocabulary& vocabulary);

// Every vehicle, by token; those without one come last, each with a single visit, as recorded.
[[nodiscard]] Result<std::vector<VehicleHistory>> vehicle_histories(const Store& store,
                                                                    const Vocabulary& vocabulary);

// Of those only the vehicles with a closed case of this main cause, each with all its visits, in
// the same order; everybody else's records are not read.
[[nodiscard]] Result<std::vector<VehicleHistory>> histories_with_cause(const Store& store,
                                                                       const Vocabulary& vocabulary,
                                                                       std::string_view cause_key);

// One vehicle's. Without any visit: kNotFound. Requires: token not empty.
[[nodiscard]] Result<VehicleHistory> history_of_vehicle(const Store& store,
                                                        const Vocabulary& vocabulary,
                                                        std::string_view token);

}  // namespace shoplore
