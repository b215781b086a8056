// Is a later visit about the complaint an earlier repair was meant to cure?
//
// Compared by what was recorded: present symptoms, codes and causes, in the words of today's
// vocabulary. Complaint texts are not compared. It does not ask when the visits were, nor whether
// they are of one vehicle: its callers do.
//
// Pure functions, any thread; they cannot fail.
#pragma once

#include <string>
#include <vector>

#include "query/lives/vehicle_histories.hpp"

namespace shoplore {

// Symptoms and codes both visits have, each sorted, symptoms first.
struct SharedFindings {
  std::vector<std::string> symptoms, codes;
  [[nodiscard]] bool empty() const { return symptoms.empty() && codes.empty(); }
};
[[nodiscard]] SharedFindings shared_findings(const PastVisit& earlier, const PastVisit& later);

enum class SameComplaint {
  kYes,
  kNo,
  kCannotTell,  // a complaint of which too little was written down
};

// kNo: a visit without a complaint; another main cause; or symptoms or codes on both sides and
// none shared. kYes: the earlier main cause is among the later causes, or no later cause is known
// and a symptom or code is shared. Unknown is not absent: a later complaint without cause, symptoms
// and codes is kCannotTell, and so is one without a cause after a visit that has neither.
[[nodiscard]] SameComplaint same_complaint(const PastVisit& earlier, const PastVisit& later);

}  // namespace shoplore
