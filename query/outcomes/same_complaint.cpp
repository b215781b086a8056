#include "query/outcomes/same_complaint.hpp"

#include <algorithm>
#include <iterator>

namespace shoplore {
namespace {

std::vector<std::string> in_both(const std::vector<std::string>& a,
                                 const std::vector<std::string>& b) {
  std::vector<std::string> both;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(both));
  return both;
}

bool has_findings(const PastVisit& visit) {
  return !visit.symptoms.empty() || !visit.codes.empty();
}

bool names_cause(const PastVisit& visit, const std::string& cause) {
  const auto& others = visit.other_causes;
  return visit.cause == cause || std::find(others.begin(), others.end(), cause) != others.end();
}

}  // namespace

SharedFindings shared_findings(const PastVisit& earlier, const PastVisit& later) {
  return {in_both(earlier.symptoms, later.symptoms), in_both(earlier.codes, later.codes)};
}

SameComplaint same_complaint(const PastVisit& earlier, const PastVisit& later) {
  if (later.state == CaseState::kNoComplaint) return SameComplaint::kNo;
  if (!later.cause.empty() && !earlier.cause.empty()) {
    return names_cause(later, earlier.cause) ? SameComplaint::kYes : SameComplaint::kNo;
  }
  if (!has_findings(earlier) || !has_findings(later)) return SameComplaint::kCannotTell;
  return shared_findings(earlier, later).empty() ? SameComplaint::kNo : SameComplaint::kYes;
}

}  // namespace shoplore
