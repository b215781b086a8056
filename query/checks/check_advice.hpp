// What to do next, put for people: the checks worth their minutes, what to ask, and whether looking
// further still pays.
//
// Repairing at once competes with checking. Where the customer has agreed to it, the expected
// minutes of trying repairs in the best order (repair_order.hpp; a part's price counted in minutes
// of this shop's hour) are set against the best check and the order it would leave. Never proposed
// where the first repair would be on brakes, steering, airbags, high voltage or a part that has to
// be coded: there a wrong guess is dangerous or cannot be taken back; nor where no cause is
// likelier than not, where no check is left to weigh it against, or where it would save next to
// nothing. Threads and errors: the counter's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/checks/next_check.hpp"
#include "query/share.hpp"

namespace shoplore {

// Whether the customer agreed to a repair on suspicion.
enum class AgreedToTry { kNo, kYes };

struct LeadingCause {
  std::string component, failure;
  double probability = 0;
};

// What an answer would leave.
struct AdvisedOutlook {
  std::string answer;
  double probability = 0;
  std::vector<LeadingCause> leading;
};

struct AdvisedCheck {
  EvidenceItem item;  // attribute; its value is empty
  double minutes = 0, removal_minutes = 0;
  std::vector<std::string> removals;  // ids, still on
  double information = 0;             // bits
  double answerable = 1, per_minute = 0;
  std::string where, how;          // the vocabulary's, how to do it safely
  Share pass_misled, fail_misled;  // of its verdicts known (check_trust.hpp)
  std::vector<AdvisedOutlook> outlooks;
};

struct RepairStep {
  std::string component, failure;
  double probability = 0, minutes = 0;  // with what has to come off for it in this order
};

struct RepairOnSuspicion {
  std::vector<RepairStep> order;
  double expected_minutes = 0;          // trying at once
  double expected_minutes_checked = 0;  // the best check first
};

struct CheckAdvice {
  std::vector<AdvisedCheck> checks, questions;  // best first
  std::optional<RepairOnSuspicion> repair;      // only where it is expected to cost less
};

// Needs the ranking of those items.
struct AdviceQuestion {
  const Ranking& ranking;
  const std::vector<EvidenceItem>& items;
  const WorkSoFar& so_far;
  AgreedToTry agreed = AgreedToTry::kNo;
};

[[nodiscard]] Result<CheckAdvice> advise(const AdviceQuestion& question, const CaseCounter& counter,
                                         const CheckBasis& basis);

// Whether a guess at this component may not be tried out on the vehicle.
[[nodiscard]] bool is_never_tried(std::string_view component, const Vocabulary& vocabulary);

}  // namespace shoplore
