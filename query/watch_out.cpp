#include "query/watch_out.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

constexpr double kLikely = 0.1;

std::string name_of_cause(const LikelyCause& cause, const Vocabulary& vocabulary) {
  return vocabulary.display_name(EntryKind::kComponent, cause.component) + ", " +
         vocabulary.display_name(EntryKind::kFailure, cause.failure);
}

std::string name_of_fix(const std::string& key, const Vocabulary& vocabulary) {
  const auto space = key.find(' ');
  return vocabulary.display_name(EntryKind::kAction, key.substr(0, space)) + " " +
         vocabulary.display_name(EntryKind::kComponent, key.substr(space + 1));
}

std::string name_of_fixes(const std::vector<std::string>& keys, const Vocabulary& vocabulary) {
  std::string text;
  for (const std::string& key : keys) {
    text += (text.empty() ? "" : " and ") + name_of_fix(key, vocabulary);
  }
  return text;
}

// Cases that came in with that repair already done and the question's present symptoms and codes.
Result<std::optional<Warning>> earlier_repair(const EvidenceItem& repair,
                                              const std::vector<EvidenceItem>& items,
                                              const LikelyCause& leading, const Filter& filter,
                                              const CaseCounter& counter,
                                              const Vocabulary& vocabulary) {
  const auto number = counter.causes().find(leading.component + ":" + leading.failure);
  if (!number) return std::optional<Warning>{};
  std::vector<EvidenceItem> with{repair};
  for (const EvidenceItem& item : items) {
    const bool shown = item.attribute.starts_with("symptom:") ||
                       item.attribute.starts_with("code:") || item.attribute == "engine_family";
    if (shown && item.value != "absent") with.push_back(item);
  }
  // Narrowest group of a useful size: this complaint on this engine, then any such repair.
  const std::vector<EvidenceItem> groups[] = {with, {repair}};
  for (const auto& group : groups) {
    const auto counts = counter.by_cause({group, filter});
    if (!counts) return fail(counts.error());
    std::uint32_t all = 0;
    for (const std::uint32_t cases : *counts) all += cases;
    if (all < kEnoughToWarn) continue;
    Warning warning;
    warning.kind = WarningKind::kEarlierRepair;
    warning.about = repair.attribute.substr(repair.attribute.find(':') + 1);
    warning.share = share_of((*counts)[*number], all);
    warning.text = fmt::format(
        "Of {} that came in {}with this already done ({}), {} turned out to be {}; we never see "
        "those it cured",
        all, &group == &groups[0] ? "like this " : "", name_of_fix(warning.about, vocabulary),
        warning.share.count, name_of_cause(leading, vocabulary));
    return std::optional(warning);
  }
  return std::optional<Warning>{};
}

std::optional<Warning> fix_that_came_back(const LikelyCause& cause, const Vocabulary& vocabulary) {
  const auto known = [](const FixCount& fix) { return fix.stayed_fixed + fix.came_back; };
  const FixCount* worst = nullptr;
  const FixCount* best = nullptr;
  for (const FixCount& fix : cause.fixes_together) {
    if (known(fix) < kEnoughToWarn) continue;
    if (3 * fix.came_back >= known(fix) &&
        (worst == nullptr || fix.came_back * known(*worst) > worst->came_back * known(fix))) {
      worst = &fix;
    }
    if (best == nullptr || fix.came_back * known(*best) < best->came_back * known(fix)) best = &fix;
  }
  if (worst == nullptr) return std::nullopt;
  Warning warning;
  warning.kind = WarningKind::kFixCameBack;
  warning.about = worst->fixes.front();
  warning.share = share_of(worst->came_back, known(*worst));
  warning.text =
      fmt::format("{}: {} alone came back {} of {} here", name_of_cause(cause, vocabulary),
                  name_of_fixes(worst->fixes, vocabulary), worst->came_back, known(*worst));
  if (best != nullptr && best != worst) {
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
    const std::uint32_t wrong = (*misled)[*number], all = (*done)[*number];
    if (all < kEnoughToWarn || 5 * wrong < all) continue;
    Warning warning;
    warning.kind = WarningKind::kCheckMisled;
    warning.about = id;
    warning.share = share_of(wrong, all);
    warning.text = fmt::format("'{}' passed and misled us {} of {} times when it was {}",
                               check.name, wrong, all, name_of_cause(cause, vocabulary));
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
    auto warning = earlier_repair(item, items, causes.front(), filter, counter, vocabulary);
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
