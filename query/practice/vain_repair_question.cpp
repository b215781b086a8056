#include "query/practice/vain_repair_question.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

constexpr double kVainFrom = 1.0 / 3;

double share_of_comebacks(const RepairChoice& choice) {
  return static_cast<double>(choice.came_back.count) / choice.came_back.out_of;
}

}  // namespace

std::vector<RepairChoice> repairs_to_tell_apart(const std::vector<ProfileCount>& profiles,
                                                const std::string& cause) {
  std::vector<RepairChoice> choices;
  for (const FixCount& fix : fixes_together(profiles, cause)) {
    const std::uint32_t known = fix.stayed_fixed + fix.came_back;
    if (known < kFewestOutcomes || choices.size() == kMostRepairsOffered) continue;
    choices.push_back(
        {fmt::format("{}", fmt::join(fix.fixes, "+")), share_of(fix.came_back, known)});
  }
  std::stable_sort(choices.begin(), choices.end(), [](const auto& a, const auto& b) {
    return share_of_comebacks(a) > share_of_comebacks(b);
  });
  const bool can_be_told =
      choices.size() > 1 && share_of_comebacks(choices.front()) >= kVainFrom &&
      2 * share_of_comebacks(choices.back()) < share_of_comebacks(choices.front());
  return can_be_told ? choices : std::vector<RepairChoice>{};
}

double points_of_repair(const RepairChoice& chosen, const RepairChoice& worst) {
  return 100 * share_of_comebacks(chosen) / share_of_comebacks(worst);
}

}  // namespace shoplore
