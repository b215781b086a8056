#include "query/watch_out/watch_question.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace shoplore {

std::vector<LikelyRow> likely_rows(const WatchQuestion& question) {
  std::vector<LikelyRow> rows;
  for (const LikelyCause& cause : question.causes) {
    if (cause.probability < kLikelyEnough) continue;
    const auto number = question.counter.causes().find(cause.component + ":" + cause.failure);
    if (number) rows.push_back({cause, *number});
  }
  return rows;
}

std::vector<EvidenceItem> complaint_of(const WatchQuestion& question) {
  std::vector<EvidenceItem> complaint;
  for (const EvidenceItem& item : question.items) {
    const bool brought =
        item.attribute.starts_with("symptom:") || item.attribute.starts_with("code:");
    if (brought && item.value == "present") complaint.push_back(item);
  }
  return complaint;
}

std::vector<EvidenceItem> vehicle_of(const WatchQuestion& question) {
  for (const std::string_view attribute : {"engine_family", "make"}) {
    for (const EvidenceItem& item : question.items) {
      if (item.attribute == attribute) return {item};
    }
  }
  return {};
}

bool states(const WatchQuestion& question, const EvidenceItem& item) {
  return std::find(question.items.begin(), question.items.end(), item) != question.items.end();
}

Result<std::vector<CaseId>> cases_behind(const CountQuestion& counted,
                                         std::optional<CauseNumber> cause,
                                         const CaseCounter& counter) {
  const auto cases = counter.cases(counted);
  if (!cases) return fail(cases.error());
  std::vector<CaseId> behind;
  for (auto it = cases->rbegin(); it != cases->rend() && behind.size() < kCasesBehind; ++it) {
    if (!cause || it->cause == *cause) behind.push_back(it->id);
  }
  return behind;
}

std::string interval_text(const Share& share) {
  return fmt::format("90 %: {:.0f} to {:.0f} %", 100 * share.interval.low,
                     100 * share.interval.high);
}

}  // namespace shoplore
