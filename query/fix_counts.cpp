#include "query/fix_counts.hpp"

#include <algorithm>
#include <map>

namespace shoplore {
namespace {

using ByFixes = std::map<std::vector<std::string>, FixCount>;

void add(FixCount& count, const ProfileCount& profile) {
  count.cases += profile.cases;
  switch (profile.profile.outcome) {
    case OutcomeStatus::kStayedFixed:
      count.stayed_fixed += profile.cases;
      break;
    case OutcomeStatus::kCameBack:
      count.came_back += profile.cases;
      break;
    case OutcomeStatus::kUnknown:
      count.unknown += profile.cases;
      break;
  }
}

std::vector<FixCount> sorted(ByFixes by_fixes) {
  std::vector<FixCount> counts;
  for (auto& [fixes, count] : by_fixes) {
    count.fixes = fixes;
    count.stayed = share_of(count.stayed_fixed, count.stayed_fixed + count.came_back);
    counts.push_back(std::move(count));
  }
  std::stable_sort(counts.begin(), counts.end(),
                   [](const FixCount& a, const FixCount& b) { return a.cases > b.cases; });
  return counts;
}

}  // namespace

std::vector<FixCount> single_fixes(const std::vector<ProfileCount>& profiles,
                                   const std::string& cause_key) {
  ByFixes by_fixes;
  for (const ProfileCount& profile : profiles) {
    if (profile.profile.cause != cause_key) continue;
    for (const std::string& fix : profile.profile.fixes) add(by_fixes[{fix}], profile);
  }
  return sorted(std::move(by_fixes));
}

std::vector<FixCount> fixes_together(const std::vector<ProfileCount>& profiles,
                                     const std::string& cause_key) {
  ByFixes by_fixes;
  for (const ProfileCount& profile : profiles) {
    const bool counts = profile.profile.cause == cause_key && !profile.profile.fixes.empty();
    if (counts) add(by_fixes[profile.profile.fixes], profile);
  }
  return sorted(std::move(by_fixes));
}

Share share_of(std::uint32_t count, std::uint32_t out_of) {
  return {count, out_of, jeffreys(count, out_of)};
}

}  // namespace shoplore
