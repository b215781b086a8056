#include "api/cli/print_track_record.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/track_record_json.hpp"

namespace shoplore {

Result<ExitCode> run(const TrackRecordVerbOptions& options, Session& session) {
  auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  const Ledger& ledger = (*snapshot)->ledger();
  const auto cases = past_cases(records->store(), records->vocabulary(), ledger);
  if (!cases) return fail(cases.error());
  const auto record =
      track_record(ledger, (*snapshot)->ranking(), *cases, {options.folds, options.seed});
  if (!record) return fail(record.error());
  session.out << (options.output == Output::kJson ? track_record_json(*record) + "\n"
                                                  : print_track_record(*record));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
