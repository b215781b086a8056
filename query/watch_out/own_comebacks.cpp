#include "query/watch_out/own_comebacks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

Share comebacks(const FixCount& fix) {
  return share_of(fix.came_back, fix.stayed_fixed + fix.came_back);
}

// Of what lasted more than two times in three, the fix best proved to: the lowest upper end of the
// interval of its comebacks, so that 4 of 80 stands before 0 of 10. Null when nothing did.
const FixCount* best_lasting(const std::vector<FixCount>& fixes) {
  const FixCount* best = nullptr;
  for (const FixCount& fix : fixes) {
    const Share share = comebacks(fix);
    if (share.out_of < kEnoughToWarn || 3 * share.count >= share.out_of) continue;
    if (best == nullptr || share.interval.high < comebacks(*best).interval.high) best = &fix;
  }
  return best;
}

const FixCount* worst_lasting(const std::vector<FixCount>& fixes) {
  const auto known = [](const FixCount& fix) { return fix.stayed_fixed + fix.came_back; };
  const FixCount* worst = nullptr;
  for (const FixCount& fix : fixes) {
    if (known(fix) < kEnoughToWarn || 3 * fix.came_back < known(fix)) continue;
    if (worst == nullptr || fix.came_back * known(*worst) > worst->came_back * known(fix)) {
      worst = &fix;
    }
  }
  return worst;
}

std::string keys_together(const std::vector<std::string>& fixes) {
  return fmt::format("{}", fmt::join(fixes, "+"));
}

// What the cases that came back say of it.
struct Comebacks {
  std::vector<CaseId> cases;  // ascending
  std::vector<int> days;
  std::vector<std::pair<std::string, std::uint32_t>> reasons;  // most often given first
};

Result<Comebacks> comebacks_of(const FixCount& fix, CauseNumber cause,
                               const WatchQuestion& question) {
  std::vector<std::string> reasons{std::string(kUnsaidReason)};
  for (const auto& [reason, name] : kEnumNames<ComebackReason>) reasons.emplace_back(name);
  const EvidenceItem done{"done:" + keys_together(fix.fixes), "present"};
  Comebacks out;
  for (const std::string& reason : reasons) {
    const auto found =
        question.counter.cases({{done, {"came_back:" + reason, "present"}}, question.filter});
    if (!found) return fail(found.error());
    std::uint32_t cases = 0;
    for (const CaseCause& each : *found) {
      if (each.cause != cause) continue;
      ++cases;
      out.cases.push_back(each.id);
      if (each.came_back_days) out.days.push_back(*each.came_back_days);
    }
    if (cases > 0 && reason != kUnsaidReason) out.reasons.emplace_back(reason, cases);
  }
  std::sort(out.cases.begin(), out.cases.end());
  std::stable_sort(out.reasons.begin(), out.reasons.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  return out;
}

// The lower of the middle two. Requires: not empty.
int median(std::vector<int> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

std::string how_soon_and_why(const Comebacks& found) {
  std::string text;
  if (!found.days.empty()) text += fmt::format(", half of them within {} days", median(found.days));
  for (std::size_t i = 0; i < found.reasons.size(); ++i) {
    std::string name = found.reasons[i].first;
    std::replace(name.begin(), name.end(), '_', ' ');
    text += fmt::format("{}{} {}", i == 0 ? "; " : ", ", name, found.reasons[i].second);
  }
  return text;
}

Result<std::optional<Warning>> worst_of(const LikelyRow& likely, const WatchQuestion& question) {
  const auto& fixes = likely.row.fixes_together;
  const FixCount* worst = worst_lasting(fixes);
  if (worst == nullptr) return std::optional<Warning>{};
  const auto found = comebacks_of(*worst, likely.number, question);
  if (!found) return fail(found.error());
  Warning warning;
  warning.kind = WarningKind::kFixCameBack;
  warning.about = keys_together(worst->fixes);
  warning.cause = likely.key();
  warning.share = comebacks(*worst);
  warning.minutes = minutes_of_cause(warning.cause, question.figures);
  warning.how_often =
      likely.row.probability * warning.share.count / static_cast<double>(warning.share.out_of);
  warning.text =
      fmt::format("{}: {}{} came back {} of {} here ({}){}",
                  display_cause_key(warning.cause, question.vocabulary),
                  display_fixes(worst->fixes, question.vocabulary),
                  worst->fixes.size() == 1 ? " alone" : "", warning.share.count,
                  warning.share.out_of, interval_text(warning.share), how_soon_and_why(*found));
  if (const FixCount* best = best_lasting(fixes)) {
    warning.text +=
        fmt::format(". Better: {}, {} of {}", display_fixes(best->fixes, question.vocabulary),
                    best->came_back, best->stayed_fixed + best->came_back);
  }
  const auto shown = std::min(found->cases.size(), kCasesBehind);
  warning.cases.assign(found->cases.rbegin(),
                       found->cases.rbegin() + static_cast<std::ptrdiff_t>(shown));
  return std::optional(std::move(warning));
}

}  // namespace

Result<std::vector<Warning>> warn_of_own_comebacks(const WatchQuestion& question) {
  std::vector<Warning> warnings;
  for (const LikelyRow& likely : likely_rows(question)) {
    auto warning = worst_of(likely, question);
    if (!warning) return fail(warning.error());
    if (*warning) warnings.push_back(std::move(**warning));
  }
  return warnings;
}

}  // namespace shoplore
