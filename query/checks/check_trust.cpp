#include "query/checks/check_trust.hpp"

#include <algorithm>
#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/contradictions.hpp"
#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kCheckPrefix = "check:";

using Counts = std::vector<std::uint32_t>;  // by CauseNumber

std::uint32_t sum(const Counts& counts) {
  std::uint32_t total = 0;
  for (const std::uint32_t count : counts) total += count;
  return total;
}

// What was said later of one verdict, by cause.
struct VerdictCounts {
  Counts given, right, misled;
};

class CheckCounts {
 public:
  CheckCounts(const CaseCounter& counter, std::string id, const Filter& filter)
      : counter_(counter), id_(std::move(id)), filter_(filter) {}

  [[nodiscard]] Result<Counts> cases(std::vector<EvidenceItem> all_of) const {
    return counter_.by_cause({std::move(all_of), filter_});
  }

  [[nodiscard]] Result<std::uint32_t> with_value(const std::string& value) const {
    const auto counts = cases({item(value)});
    if (!counts) return fail(counts.error());
    return sum(*counts);
  }

  [[nodiscard]] Result<VerdictCounts> verdict(const std::string& value) const {
    const EvidenceItem given = item(value);
    const EvidenceItem right{"right:" + id_, value}, misled{"misled:" + id_, value};
    const auto given_counts = cases({given});
    if (!given_counts) return fail(given_counts.error());
    const auto right_counts = cases({given, right});
    if (!right_counts) return fail(right_counts.error());
    const auto misled_counts = cases({given, misled});
    if (!misled_counts) return fail(misled_counts.error());
    // Done twice with the same verdict, and not the same was said of both.
    const auto both = cases({given, right, misled});
    if (!both) return fail(both.error());
    VerdictCounts counts{*given_counts, *right_counts, *misled_counts};
    for (std::size_t i = 0; i < both->size(); ++i) counts.right[i] -= (*both)[i];
    return counts;
  }

 private:
  EvidenceItem item(const std::string& value) const {
    return {std::string(kCheckPrefix) + id_, value};
  }

  const CaseCounter& counter_;
  std::string id_;
  const Filter& filter_;
};

VerdictTrust trust_in(const VerdictCounts& counts, const std::vector<bool>& borne_out_by) {
  VerdictTrust trust;
  for (std::size_t cause = 0; cause < counts.given.size(); ++cause) {
    const std::uint32_t silent = counts.given[cause] - counts.right[cause] - counts.misled[cause];
    trust.given += counts.given[cause];
    trust.right += counts.right[cause];
    trust.misled += counts.misled[cause];
    (borne_out_by[cause] ? trust.borne_out : trust.unknown) += silent;
  }
  trust.misled_us = share_of(trust.misled, trust.given - trust.unknown);
  return trust;
}

// By cause, whether the check tells about its component.
std::vector<bool> causes_told_about(const CauseTable& causes,
                                    const std::vector<std::string>& components) {
  std::vector<bool> told;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    const std::string component = cause_parts(causes.key(static_cast<CauseNumber>(i))).component;
    told.push_back(std::find(components.begin(), components.end(), component) != components.end());
  }
  return told;
}

std::vector<CauseTrust> by_cause(const VerdictCounts& pass, const VerdictCounts& fail,
                                 const std::vector<bool>& told, const CauseTable& causes) {
  std::vector<CauseTrust> rows;
  for (std::size_t i = 0; i < told.size(); ++i) {
    if (pass.given[i] + fail.given[i] == 0) continue;
    CauseTrust row;
    row.cause = causes.key(static_cast<CauseNumber>(i));
    row.told_about = told[i];
    row.pass = pass.given[i];
    row.fail = fail.given[i];
    row.misled = pass.misled[i] + fail.misled[i];
    row.against = share_of(told[i] ? row.pass : row.fail, row.pass + row.fail);
    rows.push_back(std::move(row));
  }
  std::sort(rows.begin(), rows.end(), [](const CauseTrust& a, const CauseTrust& b) {
    const auto clear = [](const CauseTrust& row) { return row.pass + row.fail; };
    return clear(a) != clear(b) ? clear(a) > clear(b) : a.cause < b.cause;
  });
  return rows;
}

DiagnosticTable table_of(const std::vector<CauseTrust>& rows) {
  DiagnosticTable table;
  for (const CauseTrust& row : rows) {
    (row.told_about ? table.true_positive : table.false_positive) += row.fail;
    (row.told_about ? table.false_negative : table.true_negative) += row.pass;
  }
  return table;
}

}  // namespace

Result<CheckTrust> trust_of(const CaseCounter& counter, std::string_view check,
                            const Vocabulary& vocabulary, const Filter& filter) {
  CheckTrust trust;
  trust.check = vocabulary.canonical(EntryKind::kCheck, check);
  const auto components = components_told_about(trust.check, vocabulary);
  trust.tells_about_components = !components.empty();
  const CheckCounts counts(counter, trust.check, filter);
  const auto pass = counts.verdict("pass"), failed = counts.verdict("fail");
  if (!pass) return fail(pass.error());
  if (!failed) return fail(failed.error());
  const auto unclear = counts.with_value("unclear"), mixed = counts.with_value("mixed");
  if (!unclear) return fail(unclear.error());
  if (!mixed) return fail(mixed.error());
  const std::vector<bool> told = causes_told_about(counter.causes(), components);
  std::vector<bool> not_told(told.size());
  // A check that tells about nothing is borne out by no cause.
  for (std::size_t i = 0; i < told.size(); ++i) {
    not_told[i] = trust.tells_about_components && !told[i];
  }
  trust.pass = trust_in(*pass, not_told);
  trust.fail = trust_in(*failed, told);
  trust.unclear = *unclear;
  trust.mixed = *mixed;
  trust.done = trust.pass.given + trust.fail.given + trust.unclear + trust.mixed;
  trust.by_cause = by_cause(*pass, *failed, told, counter.causes());
  if (trust.tells_about_components) trust.table = table_of(trust.by_cause);
  return trust;
}

Result<std::vector<CheckTrust>> trust_in_checks(const CaseCounter& counter,
                                                const Vocabulary& vocabulary,
                                                const Filter& filter) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  std::set<std::string> checks;
  for (const EvidenceItem& item : *items) {
    if (item.attribute.starts_with(kCheckPrefix)) {
      checks.insert(item.attribute.substr(kCheckPrefix.size()));
    }
  }
  std::vector<CheckTrust> all;
  for (const std::string& check : checks) {
    auto trust = trust_of(counter, check, vocabulary, filter);
    if (!trust) return fail(trust.error());
    if (trust->done > 0) all.push_back(std::move(*trust));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const CheckTrust& a, const CheckTrust& b) { return a.done > b.done; });
  return all;
}

}  // namespace shoplore
