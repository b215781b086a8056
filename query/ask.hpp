// Asking: text in, answer out. The one function behind the command line, HTTP and the page.
//
// Writes nothing. Lifetime: refers to what it is given. Threads: any number may ask one snapshot;
// the store is one thread's (it is read for the bodies of similar cases).
// Fails with kInvalidInput for an empty, overlong or non-UTF-8 question, impossible filters and
// removals or checks the vocabulary does not know,
// kBusy when the index moved on: refresh the snapshot and ask again.
#pragma once

#include <optional>
#include <string>

#include "indexer/recogniser.hpp"
#include "indexer/store.hpp"
#include "query/answer.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

// Bytes of a question.
inline constexpr std::size_t kMaxQuestionBytes = 4'000;

// A question as typed, or a record so far (an open case asked again), or both.
struct Question {
  std::string text;
  // Findings known besides the text, and the vehicle, which may have been here before; its cause,
  // if any, is ignored.
  Case record;
  // Pseudonym of the vehicle, where the record has none (records.hpp makes it of VIN or plate).
  std::string vehicle;
  std::optional<Date> day;  // of the question; none: the record's opening
  Filter filter;
  std::uint32_t rows = 5;           // likely causes shown, 1 to 50
  std::uint32_t similar_cases = 5;  // 0 to 50
  WorkSoFar so_far;                 // what is off already, and what cannot be checked today
  AgreedToTry agreed = AgreedToTry::kNo;
};

[[nodiscard]] Result<Answer> ask(const Question& question, const Snapshot& snapshot,
                                 const Store& store, const Vocabulary& vocabulary,
                                 const Recogniser& recogniser);

// Only the first step: identities removed, then what text and record state. Requires: UTF-8.
[[nodiscard]] Understood understand(const Question& question, const Vocabulary& vocabulary,
                                    const Recogniser& recogniser);

}  // namespace shoplore
