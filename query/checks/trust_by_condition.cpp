#include "query/checks/trust_by_condition.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "indexer/case_json.hpp"
#include "indexer/contradictions.hpp"
#include "query/fix_counts.hpp"

namespace shoplore {
namespace {

using ByCheckAndCondition = std::map<std::pair<std::string, std::string>, ConditionTrust>;

std::set<std::string> conditions_of(const Check& check, const Vocabulary& vocabulary) {
  std::set<std::string> conditions;
  for (const std::string& condition : check.conditions) {
    conditions.insert(vocabulary.canonical(EntryKind::kCondition, condition));
  }
  if (conditions.empty()) conditions.insert("");
  return conditions;
}

void add_verdict(ConditionTrust& trust, const Check& check, bool contradicted, bool tells) {
  if (check.verdict == Verdict::kUnclear) {
    ++trust.unclear;
    return;
  }
  VerdictTrust& verdict = check.verdict == Verdict::kPass ? trust.pass : trust.fail;
  ++verdict.given;
  if (check.later) {
    ++(*check.later == Later::kRight ? verdict.right : verdict.misled);
  } else {
    ++(tells && !contradicted ? verdict.borne_out : verdict.unknown);
  }
}

void add_case(ByCheckAndCondition& rows, const Case& record, const Vocabulary& vocabulary) {
  std::set<std::size_t> contradicted;
  for (const Contradiction& each : contradictions(record, vocabulary)) {
    contradicted.insert(each.position);
  }
  for (std::size_t i = 0; i < record.checks.size(); ++i) {
    const Check& check = record.checks[i];
    const std::string id = vocabulary.canonical(EntryKind::kCheck, check.id);
    const bool tells = !components_told_about(id, vocabulary).empty();
    for (const std::string& condition : conditions_of(check, vocabulary)) {
      add_verdict(rows[{id, condition}], check, contradicted.contains(i), tells);
    }
  }
}

}  // namespace

Result<std::vector<ConditionTrust>> trust_by_condition(const Store& store,
                                                       const Vocabulary& vocabulary) {
  ByCheckAndCondition rows;
  const auto read = store.for_each_latest([&](const Change& change) -> Result<void> {
    const auto record = case_from_json(change.body);
    if (!record) return fail(record.error());
    if (record->state == CaseState::kClosed) add_case(rows, *record, vocabulary);
    return {};
  });
  if (!read) return fail(read.error());
  std::vector<ConditionTrust> all;
  for (auto& [key, row] : rows) {
    row.check = key.first;
    row.condition = key.second;
    for (VerdictTrust* verdict : {&row.pass, &row.fail}) {
      verdict->misled_us = share_of(verdict->misled, verdict->given - verdict->unknown);
    }
    all.push_back(std::move(row));
  }
  return all;
}

}  // namespace shoplore
