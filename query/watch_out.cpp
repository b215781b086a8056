#include "query/watch_out.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/case_keys.hpp"
#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

constexpr double kLikely = 0.1;

std::string name_of_cause(const LikelyCause& cause, const Vocabulary& vocabulary) {
  return display_cause(cause.component, cause.failure, vocabulary);
}

std::string name_of_fixes(const std::vector<std::string>& keys, const Vocabulary& vocabulary) {
  std::string text;
  for (const std::string& key : keys) {
    text += (text.empty() ? "" : " and ") + display_fix(key, vocabulary);
  }
  return text;
}

// Cases that came in with that repair already done and the question's present symptoms and codes,
// and the cause most of them turned out to have: not always the one the ranking leads with.
Result<std::optional<Warning>> earlier_repair(const EvidenceItem& repair,
                                              const std::vector<EvidenceItem>& items,
                                              const Filter& filter, const CaseCounter& counter,
                                              const Vocabulary& vocabulary) {
  std::vector<EvidenceItem> with{repair};
  const bool family_known = std::any_of(items.begin(), items.end(), [](const EvidenceItem& item) {
    return item.attribute == "engine_family";
  });
  for (const EvidenceItem& item : items) {
    const bool shown = item.attribute.starts_with("symptom:") ||
                       item.attribute.starts_with("code:") || item.attribute == "engine_family" ||
                       (item.attribute == "make" && !family_known);
    if (shown && item.value != "absent") with.push_back(item);
  }
  // Narrowest group of a useful size: this complaint on this engine (or make), then any such
  // repair.
  const std::vector<EvidenceItem> groups[] = {with, {repair}};
  for (const auto& group : groups) {
    const auto counts = counter.by_cause({group, filter});
    if (!counts) return fail(counts.error());
    std::uint32_t all = 0;
    for (const std::uint32_t cases : *counts) all += cases;
    if (all < kEnoughToWarn) continue;
    const auto most = std::max_element(counts->begin(), counts->end());
    const auto cause = static_cast<CauseNumber>(most - counts->begin());
    Warning warning;
    warning.kind = WarningKind::kEarlierRepair;
    warning.about = id_of_attribute(repair.attribute);
    warning.share = share_of(*most, all);
    warning.text = fmt::format(
        "Of {} that came in {}with this already done ({}), {} turned out to be {}; we never see "
        "those it cured",
        all, &group == &groups[0] ? "like this " : "", display_fix(warning.about, vocabulary),
        *most, display_cause_key(counter.causes().key(cause), vocabulary));
    return std::optional(warning);
  }
  return std::optional<Warning>{};
}

// Of what lasted more than two times in three, the fix best proved to: the lowest upper end of the
// interval of its comebacks, so that 4 of 80 stands before 0 of 10. Null when nothing did.
const FixCount* best_lasting(const std::vector<FixCount>& fixes) {
  const auto comebacks = [](const FixCount& fix) {
    return share_of(fix.came_back, fix.stayed_fixed + fix.came_back);
  };
  const FixCount* best = nullptr;
  for (const FixCount& fix : fixes) {
    const Share share = comebacks(fix);
    if (share.out_of < kEnoughToWarn || 3 * share.count >= share.out_of) continue;
    if (best == nullptr || share.interval.high < comebacks(*best).interval.high) best = &fix;
  }
  return best;
}

std::optional<Warning> fix_that_came_back(const LikelyCause& cause, const Vocabulary& vocabulary) {
  const auto known = [](const FixCount& fix) { return fix.stayed_fixed + fix.came_back; };
  const FixCount* worst = nullptr;
  for (const FixCount& fix : cause.fixes_together) {
    if (known(fix) < kEnoughToWarn) continue;
    if (3 * fix.came_back >= known(fix) &&
        (worst == nullptr || fix.came_back * known(*worst) > worst->came_back * known(fix))) {
      worst = &fix;
    }
  }
  if (worst == nullptr) return std::nullopt;
  Warning warning;
  warning.kind = WarningKind::kFixCameBack;
  warning.about = worst->fixes.front();
  warning.share = share_of(worst->came_back, known(*worst));
  warning.text =
      fmt::format("{}: {} alone came back {} of {} here", name_of_cause(cause, vocabulary),
                  name_of_fixes(worst->fixes, vocabulary), worst->came_back, known(*worst));
  if (const FixCount* best = best_lasting(cause.fixes_together)) {
    warning.text += fmt::format("; {}: {} of {}", name_of_fixes(best->fixes, vocabulary),
                                best->came_back, known(*best));
  }
  return warning;
}

// A pass by a check that tells about the cause's component, on vehicles that had the cause.
Result<std::vector<Warning>> misleading_checks(const LikelyCause& cause, const Filter& filter,
                                               const CaseCounter& counter,
                                               const Vocabulary& vocabulary) {
  std::vector<Warning> warnings;
  const auto number = counter.causes().find(cause.component + ":" + cause.failure);
  for (const auto& [id, check] : vocabulary.entries(EntryKind::kCheck)) {
    const bool about = std::find(check.components.begin(), check.components.end(),
                                 cause.component) != check.components.end();
    if (!about || !number) continue;
    const auto misled = counter.by_cause({{{"misled:" + id, "pass"}}, filter});
    if (!misled) return fail(misled.error());
    const auto done = counter.known_by_cause("check:" + id, filter);
    if (!done) return fail(done.error());
    const auto unclear = counter.by_cause({{{"check:" + id, "unclear"}}, filter});
    if (!unclear) return fail(unclear.error());
    // Of verdicts: one that says neither can neither mislead nor be trusted.
    const std::uint32_t wrong = (*misled)[*number], all = (*done)[*number] - (*unclear)[*number];
    if (all < kEnoughToWarn || 5 * wrong < all) continue;
    Warning warning;
    warning.kind = WarningKind::kCheckMisled;
    warning.about = id;
    warning.share = share_of(wrong, all);
    const Interval& interval = warning.share.interval;
    warning.text = fmt::format(
        "'{}' passed and misled us {} of {} times (90 % interval {:.0f} to {:.0f} %) when it was "
        "{}",
        check.name, wrong, all, 100 * interval.low, 100 * interval.high,
        name_of_cause(cause, vocabulary));
    if (!check.how.empty()) warning.text += ". " + check.how;
    warnings.push_back(std::move(warning));
  }
  return warnings;
}

}  // namespace

Result<std::vector<Warning>> watch_out(const std::vector<EvidenceItem>& items,
                                       const std::vector<LikelyCause>& causes, const Filter& filter,
                                       const CaseCounter& counter, const Vocabulary& vocabulary) {
  std::vector<Warning> warnings;
  if (causes.empty()) return warnings;
  for (const EvidenceItem& item : items) {
    if (!item.attribute.starts_with("earlier_repair:") || item.value == "absent") continue;
    auto warning = earlier_repair(item, items, filter, counter, vocabulary);
    if (!warning) return fail(warning.error());
    if (*warning) warnings.push_back(std::move(**warning));
  }
  for (const LikelyCause& cause : causes) {
    if (cause.probability < kLikely) continue;
    if (auto warning = fix_that_came_back(cause, vocabulary))
      warnings.push_back(std::move(*warning));
    auto misled = misleading_checks(cause, filter, counter, vocabulary);
    if (!misled) return fail(misled.error());
    std::move(misled->begin(), misled->end(), std::back_inserter(warnings));
  }
  return warnings;
}

}  // namespace shoplore
