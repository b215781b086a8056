#include "query/watch_out/work_signs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;  // by CauseNumber

constexpr std::string_view kSign = "work_sign:";

std::string name_of_sign(const ItemByCause& sign, const Vocabulary& vocabulary) {
  return vocabulary.display_name(EntryKind::kWorkSign, id_of_attribute(sign.item.attribute));
}

Warning begun(const ItemByCause& sign, const std::string& cause, const WatchQuestion& question) {
  Warning warning;
  warning.kind = WarningKind::kWorkSign;
  warning.about = id_of_attribute(sign.item.attribute);
  warning.cause = cause;
  warning.minutes = minutes_of_cause(cause, question.figures);
  return warning;
}

// What vehicles with the sign turned out to have, on the narrowest vehicles with enough of them.
class StatedSign {
 public:
  StatedSign(const ItemByCause& sign, const WatchQuestion& question)
      : sign_(sign), question_(question) {}

  Result<std::optional<Warning>> warning() {
    if (auto found = find_scope(); !found) return fail(found.error());
    const std::uint32_t all = total(counts_);
    std::optional<std::size_t> most;
    for (std::size_t i = 0; i < counts_.size(); ++i) {
      if (most && counts_[i] <= counts_[*most]) continue;
      const auto elsewhere = others_rate(i);
      if (!elsewhere) return fail(elsewhere.error());
      if (stands_out(counts_[i], all, *elsewhere)) most = i;
    }
    if (!most) return std::optional<Warning>{};
    return led_to(static_cast<CauseNumber>(*most), all);
  }

 private:
  Result<void> find_scope() {
    std::vector<std::vector<EvidenceItem>> scopes;
    for (const std::string_view attribute : {"engine_family", "make"}) {
      for (const EvidenceItem& item : question_.items) {
        if (item.attribute == attribute) scopes.push_back({item});
      }
    }
    scopes.emplace_back();
    for (auto& scope : scopes) {
      std::vector<EvidenceItem> with = scope;
      with.push_back(sign_.item);
      auto counts = question_.counter.by_cause({with, question_.filter});
      if (!counts) return fail(counts.error());
      scope_ = std::move(scope);
      counts_ = std::move(*counts);
      if (total(counts_) >= kEnoughToWarn) break;
    }
    return {};
  }

  // Share of the cause among cases without the sign, on the same vehicles, where anybody looked.
  Result<double> others_rate(std::size_t cause) {
    if (looked_.empty()) {
      auto looked = question_.counter.by_cause({scope_, {}, {std::string(kSign)}});
      if (!looked) return fail(looked.error());
      looked_ = std::move(*looked);
      std::vector<EvidenceItem> with = scope_;
      with.push_back(sign_.item);
      auto seen = question_.counter.by_cause({std::move(with), {}});
      if (!seen) return fail(seen.error());
      for (std::size_t i = 0; i < looked_.size(); ++i) looked_[i] -= (*seen)[i];
    }
    return Others{looked_[cause], total(looked_)}.rate();
  }

  Result<std::optional<Warning>> led_to(CauseNumber cause, std::uint32_t all) const {
    Warning warning = begun(sign_, question_.counter.causes().key(cause), question_);
    warning.stated = Stated::kYes;
    warning.share = share_of(counts_[cause], all);
    warning.how_often = static_cast<double>(counts_[cause]) / all;
    const std::string where =
        scope_.empty() ? "on any vehicle" : "on " + display_vehicle_item(scope_.front());
    warning.text = fmt::format(
        "Sign of earlier work, {}: of {} with it {}, {} turned out to be {} ({})",
        name_of_sign(sign_, question_.vocabulary), all, where, counts_[cause],
        display_cause_key(warning.cause, question_.vocabulary), interval_text(warning.share));
    std::vector<EvidenceItem> with = scope_;
    with.push_back(sign_.item);
    auto behind = cases_behind({std::move(with), question_.filter}, cause, question_.counter);
    if (!behind) return fail(behind.error());
    warning.cases = std::move(*behind);
    return std::optional(std::move(warning));
  }

  const ItemByCause& sign_;
  const WatchQuestion& question_;
  std::vector<EvidenceItem> scope_;
  Counts counts_;  // with the sign, in scope_
  Counts looked_;  // without it, where anybody looked, in scope_
};

// Signs of a likely cause that are not stated yet.
class SignsToLookFor {
 public:
  explicit SignsToLookFor(const WatchQuestion& question) : question_(question) {}

  Result<std::vector<Warning>> of(const LikelyRow& likely) const {
    std::vector<Warning> out;
    const auto looked = question_.counter.by_cause({{}, question_.filter, {std::string(kSign)}});
    if (!looked) return fail(looked.error());
    for (const ItemByCause& sign : question_.basis.work_signs) {
      const bool answered =
          states(question_, sign.item) || states(question_, {sign.item.attribute, "absent"});
      if (answered || sign.cases[likely.number] < kFewestWarned) continue;
      const auto with = question_.counter.by_cause({{sign.item}, question_.filter});
      if (!with) return fail(with.error());
      const std::uint32_t count = (*with)[likely.number], all = (*looked)[likely.number];
      if (!stands_out(count, all, rate_elsewhere(sign, likely.number).rate())) continue;
      auto warning = to_look_for(sign, likely, share_of(count, all));
      if (!warning) return fail(warning.error());
      out.push_back(std::move(*warning));
    }
    return out;
  }

 private:
  Others rate_elsewhere(const ItemByCause& sign, CauseNumber cause) const {
    const Counts& looked = question_.basis.looked;
    return {sign.total - sign.cases[cause], total(looked) - looked[cause]};
  }

  Result<Warning> to_look_for(const ItemByCause& sign, const LikelyRow& likely,
                              const Share& share) const {
    Warning warning = begun(sign, likely.key(), question_);
    warning.share = share;
    warning.how_often = likely.row.probability * share.count / static_cast<double>(share.out_of);
    const Others others = rate_elsewhere(sign, likely.number);
    warning.text = fmt::format(
        "Look for a sign of earlier work, {}: of {} with {} where somebody looked, {} had it ({}); "
        "of all others, {} of {}",
        name_of_sign(sign, question_.vocabulary), share.out_of,
        display_cause_key(warning.cause, question_.vocabulary), share.count, interval_text(share),
        others.count, others.out_of);
    auto behind = cases_behind({{sign.item}, question_.filter}, likely.number, question_.counter);
    if (!behind) return fail(behind.error());
    warning.cases = std::move(*behind);
    return warning;
  }

  const WatchQuestion& question_;
};

}  // namespace

Result<std::vector<Warning>> warn_of_work_signs(const WatchQuestion& question) {
  std::vector<Warning> warnings;
  for (const ItemByCause& sign : question.basis.work_signs) {
    if (!states(question, sign.item)) continue;
    auto warning = StatedSign(sign, question).warning();
    if (!warning) return fail(warning.error());
    if (*warning) warnings.push_back(std::move(**warning));
  }
  for (const LikelyRow& likely : likely_rows(question)) {
    auto found = SignsToLookFor(question).of(likely);
    if (!found) return fail(found.error());
    std::move(found->begin(), found->end(), std::back_inserter(warnings));
  }
  return warnings;
}

}  // namespace shoplore
