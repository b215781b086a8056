#include "query/watch_out/misleading_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "indexer/contradictions.hpp"
#include "query/checks/check_trust.hpp"
#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;  // by CauseNumber

bool tells_about(std::string_view check, std::string_view component, const Vocabulary& vocabulary) {
  const auto components = components_told_about(check, vocabulary);
  return std::find(components.begin(), components.end(), component) != components.end();
}

class MisleadingChecks {
 public:
  explicit MisleadingChecks(const WatchQuestion& question) : question_(question) {}

  Result<std::vector<Warning>> warnings() {
    for (const LikelyRow& likely : likely_rows(question_)) {
      for (const auto& [id, check] : question_.vocabulary.entries(EntryKind::kCheck)) {
        if (!tells_about(id, likely.row.component, question_.vocabulary)) continue;
        if (auto passed = pass_misled(id, check, likely); !passed) return fail(passed.error());
        if (auto failed = fail_misled(id, check, &likely); !failed) return fail(failed.error());
      }
    }
    for (const EvidenceItem& item : question_.items) {
      if (kind_of_attribute(item.attribute) != "check" || item.value != "fail") continue;
      const std::string id(id_of_attribute(item.attribute));
      const Entry* check = question_.vocabulary.find(EntryKind::kCheck, id);
      if (check == nullptr) continue;
      if (auto failed = fail_misled(id, *check, nullptr); !failed) return fail(failed.error());
    }
    return std::move(warnings_);
  }

 private:
  Result<Counts> count(std::vector<EvidenceItem> items) const {
    return question_.counter.by_cause({std::move(items), question_.filter});
  }

  Result<void> pass_misled(const std::string& id, const Entry& check, const LikelyRow& likely) {
    const EvidenceItem misled_item{"misled:" + id, "pass"};
    const auto misled = count({misled_item});
    if (!misled) return fail(misled.error());
    const std::uint32_t wrong = (*misled)[likely.number];
    if (wrong < kFewestWarned) return {};
    std::uint32_t clear = 0;
    for (const char* verdict : {"pass", "fail"}) {
      const auto given = count({{"check:" + id, verdict}});
      if (!given) return fail(given.error());
      clear += (*given)[likely.number];
    }
    // Mixed verdicts can mislead too, but are no clear ones.
    if (clear < wrong || !stands_out(wrong, clear, question_.basis.pass_misled)) return {};
    Warning warning =
        begun(WarningKind::kPassMisled, id, check, likely.key(), share_of(wrong, clear));
    warning.how_often = likely.row.probability * wrong / static_cast<double>(warning.share.out_of);
    warning.text = fmt::format(
        "'{}' passed and misled us {} of {} times when it was {} ({})", check.name, wrong, clear,
        display_cause_key(warning.cause, question_.vocabulary), interval_text(warning.share));
    return put(std::move(warning), check, misled_item, likely.number);
  }

  // `likely` is the cause the check tells about; null where the question states the fail.
  Result<void> fail_misled(const std::string& id, const Entry& check, const LikelyRow* likely) {
    const EvidenceItem misled_item{"misled:" + id, "fail"};
    const auto misled = count({misled_item});
    if (!misled) return fail(misled.error());
    if (total(*misled) < kFewestWarned || !fails_.insert(id).second) return {};
    const auto trust = trust_of(question_.counter, id, question_.vocabulary, question_.filter);
    if (!trust) return fail(trust.error());
    const Share& share = trust->fail.misled_us;
    if (!stands_out(share.count, share.out_of, question_.basis.fail_misled)) return {};
    Warning warning =
        begun(WarningKind::kFailMisled, id, check, likely == nullptr ? "" : likely->key(), share);
    warning.stated = states(question_, {"check:" + id, "fail"}) ? Stated::kYes : Stated::kNo;
    const double probability = likely == nullptr ? 1 : likely->row.probability;
    warning.how_often = probability * share.count / static_cast<double>(share.out_of);
    warning.text =
        fmt::format("'{}' failed and misled us {} of {} times: it was something else ({})",
                    check.name, share.count, share.out_of, interval_text(share));
    return put(std::move(warning), check, misled_item, std::nullopt);
  }

  Warning begun(WarningKind kind, const std::string& id, const Entry& check,
                const std::string& cause, const Share& share) const {
    Warning warning;
    warning.kind = kind;
    warning.about = id;
    warning.cause = cause;
    warning.share = share;
    warning.minutes = question_.figures.check_minutes(id, question_.vocabulary);
    const std::string component = check.components.empty() ? "" : check.components.front();
    warning.minutes += cause.empty() ? minutes_of_component(component, question_.figures)
                                     : minutes_of_cause(cause, question_.figures);
    return warning;
  }

  Result<void> put(Warning warning, const Entry& check, const EvidenceItem& misled,
                   std::optional<CauseNumber> cause) {
    if (!check.how.empty()) warning.text += ". " + check.how;
    auto behind = cases_behind({{misled}, question_.filter}, cause, question_.counter);
    if (!behind) return fail(behind.error());
    warning.cases = std::move(*behind);
    warnings_.push_back(std::move(warning));
    return {};
  }

  const WatchQuestion& question_;
  std::vector<Warning> warnings_;
  std::set<std::string> fails_;  // checks whose fails were looked at
};

}  // namespace

Result<std::vector<Warning>> warn_of_misleading_checks(const WatchQuestion& question) {
  return MisleadingChecks(question).warnings();
}

}  // namespace shoplore
