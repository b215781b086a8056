// Of which repairs nobody knows yet whether they lasted: whom to ask.
//
// A closed case with fixes is due when at least kDueAfter has gone by since the work, or since
// somebody last asked and could not tell (`unknown` with a day), and nothing was heard of it: no
// outcome recorded, no case that follows it, no later visit of the vehicle (fix_lives.hpp). A
// service visit alone takes a case off the list.
//
// Writes nothing. Threads, errors: the store's. Reads every record once.
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// Most comebacks show within weeks; two months later an answer means something.
inline constexpr std::chrono::days kDueAfter{60};

struct DueOutcome {
  std::string ref, job_number;  // the job number may be empty
  Vehicle vehicle;
  std::string cause;               // cause key
  std::vector<std::string> fixes;  // fix keys; never empty
  Date done;
  std::chrono::days since{0};  // from then to today
  std::optional<Date> asked;   // when somebody asked last
};

struct OutcomesDue {
  std::vector<DueOutcome> cases;  // the latest work first, at most the limit
  std::size_t all = 0;            // due in all
};

[[nodiscard]] Result<OutcomesDue> outcomes_due(const Store& store, const Vocabulary& vocabulary,
                                               Date today, std::size_t limit);

}  // namespace shoplore
