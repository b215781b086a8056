#include "query/ranking/past_cases.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "indexer/case_json.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/complaint_words.hpp"
#include "indexer/foreign_words.hpp"
#include "query/ranking/likely_causes.hpp"

namespace shoplore {

Result<std::vector<PastCase>> past_cases(const Store& store, const Vocabulary& vocabulary,
                                         const CaseCounter& counter) {
  std::vector<PastCase> cases;
  const auto seen = counter.by_cause({});
  if (!seen) return fail(seen.error());
  auto read = store.for_each_latest([&](const Change& change) -> Result<void> {
    const auto record = case_from_json(change.body);
    if (!record) return fail(record.error());
    if (record->state != CaseState::kClosed || !record->cause) return {};
    const auto cause = counter.causes().find(cause_key(*record->cause, vocabulary));
    if (!cause) return {};  // closed since this snapshot
    PastCase past;
    past.stated = {change.id, *cause, evidence_of(*record, vocabulary),
                   known_in(*record, vocabulary)};
    past.questions = ranking_items(past.stated.items);
    past.seen = (*seen)[*cause];
    past.complaint = record->complaint;
    for (EvidenceItem& word : complaint_words(past.complaint)) {
      past.stated.items.push_back(std::move(word));
    }
    if (record->closed) {
      past.closed_year = static_cast<int>(std::chrono::year_month_day(record->closed->days).year());
    }
    for (const EvidenceItem& item : past.stated.items) {
      if (item.attribute == "engine_family") past.engine_family = item.value;
    }
    cases.push_back(std::move(past));
    return {};
  });
  if (!read) return fail(read.error());
  return cases;
}

PastQuestion question_of(const PastCase& past, const Recogniser* recogniser) {
  PastQuestion question{past.questions, {}};
  if (recogniser != nullptr) {
    question.words =
        foreign_words(past.complaint, recogniser->recognise(past.complaint), *recogniser);
  }
  return question;
}

std::vector<EvidenceItem> some_of(const PastQuestion& question, double hidden,
                                  std::mt19937_64& random) {
  auto items = some_of(question.findings, hidden, random);
  for (EvidenceItem& word : some_of(question.words, hidden, random)) {
    items.push_back(std::move(word));
  }
  return items;
}

std::vector<EvidenceItem> some_of(const std::vector<EvidenceItem>& items, double hidden,
                                  std::mt19937_64& random) {
  const auto k = static_cast<double>(items.size());
  auto keep = static_cast<std::size_t>(std::lround((1 - hidden) * k));
  if (keep == 0 && !items.empty()) keep = 1;
  std::vector<EvidenceItem> shuffled = items;
  std::shuffle(shuffled.begin(), shuffled.end(), random);
  shuffled.resize(keep);
  std::sort(shuffled.begin(), shuffled.end());
  return shuffled;
}

}  // namespace shoplore
