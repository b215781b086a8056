#include "query/watch_out/part_brands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kBrand = "brand:";
// Reasons that say something of the part; the last is none given.
constexpr std::array<std::string_view, 3> kOfThePart{"part", "same_cause", kUnsaidReason};

// Components that the likely causes' fixes replace.
std::set<std::string> replaced(const WatchQuestion& question) {
  std::set<std::string> components;
  for (const LikelyRow& likely : likely_rows(question)) {
    for (const FixCount& fix : likely.row.fixes) {
      const Fix parts = fix_parts(fix.fixes.front());
      if (parts.action == "replace") components.insert(parts.component);
    }
  }
  return components;
}

struct BrandOutcomes {
  const ItemByCause* brand = nullptr;
  std::uint32_t came_back = 0, known = 0;
};

Result<BrandOutcomes> outcomes_of(const ItemByCause& brand, const WatchQuestion& question) {
  const auto tally = question.counter.tally({{brand.item}, question.filter});
  if (!tally) return fail(tally.error());
  BrandOutcomes out{&brand, 0, 0};
  for (const ProfileCount& profile : tally->profiles) {
    if (profile.profile.outcome == OutcomeStatus::kStayedFixed) out.known += profile.cases;
  }
  for (const std::string_view reason : kOfThePart) {
    const EvidenceItem came_back{"came_back:" + std::string(reason), "present"};
    const auto cases = question.counter.by_cause({{brand.item, came_back}, question.filter});
    if (!cases) return fail(cases.error());
    out.came_back += total(*cases);
  }
  out.known += out.came_back;
  return out;
}

Result<std::vector<CaseId>> cases_back(const ItemByCause& brand, const WatchQuestion& question) {
  std::vector<CaseId> ids;
  for (const std::string_view reason : kOfThePart) {
    const EvidenceItem came_back{"came_back:" + std::string(reason), "present"};
    auto some = cases_behind({{brand.item, came_back}, question.filter}, {}, question.counter);
    if (!some) return fail(some.error());
    ids.insert(ids.end(), some->begin(), some->end());
  }
  std::sort(ids.rbegin(), ids.rend());
  ids.resize(std::min(ids.size(), kCasesBehind));
  return ids;
}

Result<std::optional<Warning>> compared(const BrandOutcomes& brand, const Share& others,
                                        const WatchQuestion& question) {
  const Share own = share_of(brand.came_back, brand.known);
  const bool enough = own.out_of >= kEnoughOutcomes && others.out_of >= kEnoughOutcomes;
  if (!enough || own.interval.low <= others.interval.high) return std::optional<Warning>{};
  const EvidenceItem& item = brand.brand->item;
  const std::string component(id_of_attribute(item.attribute));
  Warning warning;
  warning.kind = WarningKind::kPartBrand;
  warning.about = item.value;
  warning.share = own;
  const double other_rate = static_cast<double>(others.count) / others.out_of;
  warning.minutes = minutes_of_component(component, question.figures);
  warning.how_often = static_cast<double>(own.count) / own.out_of - other_rate;
  warning.text = fmt::format(
      "In-house: {} of brand \"{}\" came back {} of {} times ({}), of other brands {} of {}",
      question.vocabulary.display_name(EntryKind::kComponent, component), item.value, own.count,
      own.out_of, interval_text(own), others.count, others.out_of);
  auto behind = cases_back(*brand.brand, question);
  if (!behind) return fail(behind.error());
  warning.cases = std::move(*behind);
  return std::optional(std::move(warning));
}

}  // namespace

Result<std::vector<Warning>> warn_of_part_brands(const WatchQuestion& question) {
  std::vector<Warning> warnings;
  if (question.basis.brands.empty()) return warnings;
  for (const std::string& component : replaced(question)) {
    std::vector<BrandOutcomes> brands;
    std::uint32_t came_back = 0, known = 0;
    for (const ItemByCause& brand : question.basis.brands) {
      if (brand.item.attribute != std::string(kBrand) + component) continue;
      auto outcomes = outcomes_of(brand, question);
      if (!outcomes) return fail(outcomes.error());
      came_back += outcomes->came_back;
      known += outcomes->known;
      brands.push_back(*outcomes);
    }
    for (const BrandOutcomes& brand : brands) {
      const Share others = share_of(came_back - brand.came_back, known - brand.known);
      auto warning = compared(brand, others, question);
      if (!warning) return fail(warning.error());
      if (*warning) warnings.push_back(std::move(**warning));
    }
  }
  return warnings;
}

}  // namespace shoplore
