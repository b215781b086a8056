// What each verb does with its options, one function and one source a verb.
//
// Answers go to `out`, notes and progress to `err`; an Error is handed back for program.cpp to
// print. One thread.
#pragma once

#include <istream>
#include <ostream>

#include "api/cli/arguments.hpp"
#include "api/cli/text_layout.hpp"
#include "api/wire/problem_json.hpp"
#include "indexer/records.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

enum class Progress { kSilent, kShown };

// Where a verb works: the shop, the streams, and how they look.
struct Session {
  ShopFolder folder;
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
  Page page;
  Progress progress = Progress::kSilent;
};

[[nodiscard]] Result<ExitCode> run(const InitOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const AddOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const ShowOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const FindOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const AskOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const OutcomesDueOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const OutcomeOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PlanOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const ImportOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const ExportOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const VerifyOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const ReindexOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const TrackRecordVerbOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const MileageOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const LatelyOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PatternsOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const FitOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PracticeOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PracticeProgressOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PracticeExportOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const PracticeDeleteOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const VocabularySearchOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const VocabularyShowOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const VocabularyEditOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const ServeOptions& options, Session& session);
[[nodiscard]] Result<ExitCode> run(const HelpText& options, Session& session);

// Opens the records and lets the index follow them; says so when it was rebuilt, or when another
// process is at it and the answer may be a moment behind.
[[nodiscard]] Result<Records> open_in_step(Session& session);

// Runs `ask` on a snapshot just opened, again with a fresh one when the index moved on (kBusy).
template <class Ask>
[[nodiscard]] auto on_snapshot(const ShopFolder& folder, const Ask& ask)
    -> decltype(ask(std::declval<const Snapshot&>())) {
  constexpr int kTries = 3;
  for (int tries = 1;; ++tries) {
    const auto snapshot = Snapshot::open(folder);
    if (!snapshot && (snapshot.error().code != ErrorCode::kBusy || tries == kTries)) {
      return fail(snapshot.error());
    }
    if (!snapshot) continue;
    auto answer = ask(**snapshot);
    if (answer || answer.error().code != ErrorCode::kBusy || tries == kTries) return answer;
  }
}

}  // namespace shoplore
