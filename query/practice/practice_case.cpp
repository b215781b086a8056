#include "query/practice/practice_case.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/case_keys.hpp"
#include "query/ranking/likely_causes.hpp"

namespace shoplore {
namespace {

bool outcome_is_known(const Case& record) {
  if (!record.outcome) return false;
  if (record.outcome->status == OutcomeStatus::kStayedFixed) return true;
  return record.outcome->status == OutcomeStatus::kCameBack && record.outcome->reason &&
         *record.outcome->reason != ComebackReason::kWrongCause;
}

bool has_something_to_go_by(const Case& record) {
  return !record.codes.empty() ||
         std::any_of(record.symptoms.begin(), record.symptoms.end(),
                     [](const Symptom& each) { return each.state == Presence::kPresent; });
}

std::string reading_text(const Check& check) {
  if (!check.reading) return "";
  const std::string text =
      check.reading->number ? fmt::format("{:.6g}", *check.reading->number) : check.reading->word;
  return check.unit.empty() ? text : text + " " + check.unit;
}

}  // namespace

Case as_it_came_in(const Case& record) {
  Case shown;
  shown.opened = record.opened;
  shown.vehicle = record.vehicle;
  shown.vehicle.token.clear();
  shown.complaint = record.complaint;
  shown.facts = record.facts;
  shown.symptoms = record.symptoms;
  shown.scanned = record.scanned;
  std::copy_if(record.codes.begin(), record.codes.end(), std::back_inserter(shown.codes),
               [](const Code& each) { return each.seen == CodeSeen::kArrival; });
  shown.earlier_repairs = record.earlier_repairs;
  return shown;
}

std::optional<PracticeCase> practice_case(CaseId id, Case record, const CauseTable& causes,
                                          const Vocabulary& vocabulary) {
  if (record.state != CaseState::kClosed || !record.cause || !outcome_is_known(record)) return {};
  const Case shown = as_it_came_in(record);
  if (!has_something_to_go_by(shown)) return {};
  PracticeCase out;
  out.cause = cause_key(*record.cause, vocabulary);
  const auto cause = causes.find(out.cause);
  if (!cause) return {};  // closed since this snapshot
  out.stated = {id, *cause, evidence_of(record, vocabulary), known_in(record, vocabulary)};
  out.arrival = ranking_items(evidence_of(shown, vocabulary));
  out.record = std::move(record);
  return out;
}

CheckAnswer answer_of_check(const Case& record, std::string_view check,
                            const Vocabulary& vocabulary) {
  CheckAnswer answer;
  for (const EvidenceItem& item : evidence_of(record, vocabulary)) {
    if (item.attribute == "check:" + std::string(check)) answer.verdict = item.value;
  }
  for (const Check& each : record.checks) {
    if (vocabulary.canonical(EntryKind::kCheck, each.id) != check) continue;
    const std::string text = reading_text(each);
    if (!text.empty()) answer.reading += (answer.reading.empty() ? "" : ", ") + text;
  }
  return answer;
}

}  // namespace shoplore
