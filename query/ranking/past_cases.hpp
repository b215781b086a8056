// The closed cases as questions: what each stated, so that it can be asked as if it were new.
//
// Threads and errors: the store's.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "indexer/recogniser.hpp"
#include "indexer/store.hpp"
#include "query/ranking/question_counts.hpp"

namespace shoplore {

struct PastCase {
  LeftOut stated;                       // its id, cause, items and known groups
  std::vector<EvidenceItem> questions;  // ranking_items of them, sorted
  std::string engine_family;            // lower case; empty when not written down
  int closed_year = 0;
  std::uint32_t seen = 0;  // cases of its cause, itself included
  std::string complaint;
};

// Every closed case that the counter counts, in id order.
[[nodiscard]] Result<std::vector<PastCase>> past_cases(const Store& store,
                                                       const Vocabulary& vocabulary,
                                                       const CaseCounter& counter);

// What is asked of a past case: its findings, and the words of its complaint that are foreign to
// the vocabulary; none without a recogniser.
struct PastQuestion {
  std::vector<EvidenceItem> findings, words;
};
[[nodiscard]] PastQuestion question_of(const PastCase& past, const Recogniser* recogniser);

// some_of the findings, then some_of the words.
[[nodiscard]] std::vector<EvidenceItem> some_of(const PastQuestion& question, double hidden,
                                                std::mt19937_64& random);

// round((1 - hidden) k) of the items, drawn without order; at least one where there is any.
[[nodiscard]] std::vector<EvidenceItem> some_of(const std::vector<EvidenceItem>& items,
                                                double hidden, std::mt19937_64& random);

}  // namespace shoplore
