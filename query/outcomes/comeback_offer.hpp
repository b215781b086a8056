// Is this vehicle back with something that was repaired here before?
//
// A case whose vehicle is known by its token is compared with that vehicle's closed cases: one is
// offered as what it may be a comeback of when the work was done at most kComebackWindow before
// and both have a symptom present, a code or the main cause in common. It is an offer: whether it
// is a comeback, and why, is for whoever closes the case to say. Nothing is offered for a case
// that already follows another, and no case that another one already follows, or that a recorded
// outcome vouches for on or after the day this case was opened.
//
// Writes nothing. Threads, errors: the store's. Reads the records of that vehicle only.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"
#include "query/outcomes/same_complaint.hpp"

namespace shoplore {

inline constexpr std::chrono::days kComebackWindow{730};

struct ComebackOffer {
  std::string ref;  // of the earlier case
  Date done;
  std::chrono::days since{0};  // from the work to the opening of the present case
  std::optional<Kilometres> km_since;
  std::string cause;               // cause key
  std::vector<std::string> fixes;  // fix keys; may be empty
  SharedFindings shared;           // empty when only the cause is the same
  std::vector<ComebackReason> possible;
};

// Those of the present case, the latest work first. It may be a case not stored yet (empty ref);
// open, waiting or closed: of any other state there are none.
[[nodiscard]] Result<std::vector<ComebackOffer>> comeback_offers(const Case& present,
                                                                 const Store& store,
                                                                 const Vocabulary& vocabulary);

// Whether the present visit may be a comeback of the earlier one, by the rule above. The history is
// that vehicle's. Pure, any thread.
[[nodiscard]] bool may_be_comeback(const PastVisit& earlier, const PastVisit& present,
                                   const VehicleHistory& history);

// Which reasons a comeback may have. While the present cause is not known: all. Of the same cause:
// same_cause, part, workmanship. Of another: wrong_cause, workmanship, unrelated, and part when
// the present cause is of a component that was worked on.
[[nodiscard]] std::vector<ComebackReason> possible_reasons(const PastVisit& earlier,
                                                           const PastVisit& present);

}  // namespace shoplore
