#include "query/watch_out/earlier_repairs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;  // by CauseNumber

constexpr std::string_view kRepair = "earlier_repair:";

// Cases like this one, on some vehicles.
struct Group {
  std::vector<EvidenceItem> items;
  std::uint32_t asked = 0;
};

class EarlierRepairs {
 public:
  explicit EarlierRepairs(const WatchQuestion& question) : question_(question) {
    for (const std::string& key : keys(question.counter.causes())) {
      components_.push_back(cause_parts(key).component);
    }
  }

  Result<std::vector<Warning>> warnings() {
    if (auto found = find_groups(); !found) return fail(found.error());
    std::vector<Warning> out;
    for (const ItemByCause& repair : question_.basis.earlier_repairs) {
      const bool stated = states(question_, repair.item);
      auto warning = stated ? already_done(repair) : before_ordering(repair);
      if (!warning) return fail(warning.error());
      if (*warning) out.push_back(std::move(**warning));
    }
    return out;
  }

 private:
  static std::vector<std::string> keys(const CauseTable& causes) {
    std::vector<std::string> all;
    for (CauseNumber i = 0; i < causes.size(); ++i) all.push_back(causes.key(i));
    return all;
  }

  Result<Counts> count(const std::vector<EvidenceItem>& items,
                       const std::vector<EvidenceItem>& more = {},
                       const std::vector<std::string>& known = {}) const {
    std::vector<EvidenceItem> all_of = items;
    all_of.insert(all_of.end(), more.begin(), more.end());
    return question_.counter.by_cause({std::move(all_of), question_.filter, known});
  }

  Result<std::uint32_t> asked_in(const std::vector<EvidenceItem>& items) const {
    const auto asked = count(items, {}, {std::string(kRepair)});
    if (!asked) return fail(asked.error());
    return total(*asked);
  }

  // The complaint on all vehicles and on those of the question.
  Result<void> find_groups() {
    std::vector<EvidenceItem> complaint = complaint_of(question_);
    if (complaint.empty()) return {};
    auto asked = asked_in(complaint);
    if (!asked) return fail(asked.error());
    if (complaint.size() > 1 && *asked < kLikeThis) {
      if (auto sorted = rarest_last(complaint); !sorted) return fail(sorted.error());
      asked = asked_in(complaint);
      while (asked && complaint.size() > 1 && *asked < kLikeThis) {
        complaint.erase(complaint.begin());
        asked = asked_in(complaint);
      }
      if (!asked) return fail(asked.error());
    }
    wide_ = {complaint, *asked};
    narrow_ = wide_;
    asked_anywhere_ = *asked;
    if (!question_.filter.is_open()) {
      const auto anywhere = question_.counter.by_cause({complaint, {}, {std::string(kRepair)}});
      if (!anywhere) return fail(anywhere.error());
      asked_anywhere_ = total(*anywhere);
    }
    const auto vehicle = vehicle_of(question_);
    if (vehicle.empty()) return {};
    narrow_.items.insert(narrow_.items.end(), vehicle.begin(), vehicle.end());
    asked = asked_in(narrow_.items);
    if (!asked) return fail(asked.error());
    narrow_.asked = *asked;
    return {};
  }

  // Without findings the records never had, unless they had none of them.
  Result<void> rarest_last(std::vector<EvidenceItem>& complaint) const {
    std::vector<std::pair<std::uint32_t, EvidenceItem>> counted;
    for (EvidenceItem& item : complaint) {
      const auto cases = count({item});
      if (!cases) return fail(cases.error());
      counted.emplace_back(total(*cases), std::move(item));
    }
    std::sort(counted.rbegin(), counted.rend());
    complaint.clear();
    for (auto& [cases, item] : counted) {
      if (cases > 0 || counted.front().first == 0) complaint.push_back(std::move(item));
    }
    return {};
  }

  // Those whose cause was on another component than the repair.
  std::uint32_t in_vain(const Counts& counts, std::string_view component) const {
    std::uint32_t sum = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
      if (components_[i] != component) sum += counts[i];
    }
    return sum;
  }

  static std::string fix_of(const ItemByCause& repair) {
    return std::string(id_of_attribute(repair.item.attribute));
  }
  static std::string component_of(const std::string& fix) { return fix.substr(fix.find(' ') + 1); }

  // Among the cases outside the complaint, whatever the filter; `wide` is the count within it.
  Result<double> rate_elsewhere(const ItemByCause& repair, const Counts& wide) const {
    const std::string component = component_of(fix_of(repair));
    Counts inside = wide;
    if (!question_.filter.is_open()) {
      auto unfiltered = question_.counter.by_cause({with(wide_.items, repair.item), {}});
      if (!unfiltered) return fail(unfiltered.error());
      inside = std::move(*unfiltered);
    }
    return Others{in_vain(repair.cases, component) - in_vain(inside, component),
                  total(question_.basis.asked) - asked_anywhere_}
        .rate();
  }

  static std::vector<EvidenceItem> with(std::vector<EvidenceItem> items, EvidenceItem item) {
    items.push_back(std::move(item));
    return items;
  }

  struct InVain {
    const Group* group = nullptr;  // null: it stands out in none
    Counts counts;                 // with the repair, in that group
    Share share;                   // in vain, of those asked
  };

  // The narrowest group in which the repair was in vain credibly more often than elsewhere.
  Result<InVain> standing_out(const ItemByCause& repair) const {
    InVain none;
    if (wide_.items.empty() || repair.total < kFewestWarned) return none;
    const std::string component = component_of(fix_of(repair));
    auto wide = count(wide_.items, {repair.item});
    if (!wide) return fail(wide.error());
    if (in_vain(*wide, component) < kFewestWarned) return none;
    const auto elsewhere = rate_elsewhere(repair, *wide);
    if (!elsewhere) return fail(elsewhere.error());
    auto narrow = count(narrow_.items, {repair.item});
    if (!narrow) return fail(narrow.error());
    for (const auto& [group, counts] : {std::pair{&narrow_, &*narrow}, std::pair{&wide_, &*wide}}) {
      const std::uint32_t done = in_vain(*counts, component);
      if (!stands_out(done, group->asked, *elsewhere)) continue;
      return InVain{group, *counts, share_of(done, group->asked)};
    }
    return none;
  }

  Warning begun(const ItemByCause& repair, Stated stated) const {
    Warning warning;
    warning.kind = WarningKind::kEarlierRepair;
    warning.stated = stated;
    warning.about = fix_of(repair);
    warning.minutes = minutes_of_component(component_of(warning.about), question_.figures);
    return warning;
  }

  Result<std::optional<Warning>> before_ordering(const ItemByCause& repair) const {
    const auto found = standing_out(repair);
    if (!found) return fail(found.error());
    if (found->group == nullptr) return std::optional<Warning>{};
    Warning warning = begun(repair, Stated::kNo);
    warning.share = found->share;
    warning.how_often = static_cast<double>(warning.share.count) / warning.share.out_of;
    warning.text = fmt::format(
        "Before you {}: of {} that came in like this{}, {} had that already done and it had not "
        "cured them ({})",
        display_fix(warning.about, question_.vocabulary), warning.share.out_of,
        where(*found->group), warning.share.count, interval_text(warning.share));
    auto behind = cases_in_vain(found->group->items, repair);
    if (!behind) return fail(behind.error());
    warning.cases = std::move(*behind);
    return std::optional(std::move(warning));
  }

  // " on any vehicle" where the question names vehicles and these are more than those.
  std::string where(const Group& group) const {
    return &group == &wide_ && narrow_.items.size() > wide_.items.size() ? " on any vehicle" : "";
  }

  Result<std::vector<CaseId>> cases_in_vain(const std::vector<EvidenceItem>& items,
                                            const ItemByCause& repair) const {
    const auto cases = question_.counter.cases({with(items, repair.item), question_.filter});
    if (!cases) return fail(cases.error());
    const std::string component = component_of(fix_of(repair));
    std::vector<CaseId> behind;
    for (auto it = cases->rbegin(); it != cases->rend() && behind.size() < kCasesBehind; ++it) {
      if (components_[it->cause] != component) behind.push_back(it->id);
    }
    return behind;
  }

  Result<std::optional<Warning>> already_done(const ItemByCause& repair) const {
    auto found = standing_out(repair);
    if (!found) return fail(found.error());
    if (found->group != nullptr) {
      // Five with it already done, or it is no group to speak of.
      for (const Group* group : {&narrow_, &wide_}) {
        const auto counts = count(group->items, {repair.item});
        if (!counts) return fail(counts.error());
        if (total(*counts) < kEnoughToWarn) continue;
        return turned_out(repair, *counts, *group, "like this" + where(*group));
      }
    }
    const auto anywhere = count({repair.item});
    if (!anywhere) return fail(anywhere.error());
    const std::size_t most = most_often(*anywhere);
    const Others others{question_.basis.seen[most] - repair.cases[most],
                        total(question_.basis.seen) - repair.total};
    if (!stands_out((*anywhere)[most], total(*anywhere), others.rate())) {
      return std::optional<Warning>{};
    }
    return turned_out(repair, *anywhere, {}, "with any complaint");
  }

  static std::size_t most_often(const Counts& counts) {
    const auto most = std::max_element(counts.begin(), counts.end());
    return static_cast<std::size_t>(most - counts.begin());
  }

  // The cause most of them had: not always the one the ranking leads with.
  Result<std::optional<Warning>> turned_out(const ItemByCause& repair, const Counts& counts,
                                            const Group& group, const std::string& how) const {
    const std::size_t most = most_often(counts);
    const auto number = static_cast<CauseNumber>(most);
    Warning warning = begun(repair, Stated::kYes);
    warning.cause = question_.counter.causes().key(number);
    warning.share = share_of(counts[most], total(counts));
    warning.how_often = static_cast<double>(warning.share.count) / warning.share.out_of;
    warning.text = fmt::format(
        "Of {} that came in {} with this already done ({}), {} turned out to be {} ({}); we never "
        "see those it cured",
        warning.share.out_of, how, display_fix(warning.about, question_.vocabulary),
        warning.share.count, display_cause_key(warning.cause, question_.vocabulary),
        interval_text(warning.share));
    auto behind =
        cases_behind({with(group.items, repair.item), question_.filter}, number, question_.counter);
    if (!behind) return fail(behind.error());
    warning.cases = std::move(*behind);
    return std::optional(std::move(warning));
  }

  const WatchQuestion& question_;
  std::vector<std::string> components_;  // of each cause, by CauseNumber
  Group wide_, narrow_;
  std::uint32_t asked_anywhere_ = 0;  // of the wide group, whatever the filter
};

}  // namespace

Result<std::vector<Warning>> warn_of_earlier_repairs(const WatchQuestion& question) {
  return EarlierRepairs(question).warnings();
}

}  // namespace shoplore
