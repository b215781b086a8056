#include <algorithm>

#include "api/cli/print_check_trust.hpp"
#include "api/cli/print_track_record.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/check_trust_json.hpp"
#include "api/wire/track_record_json.hpp"

namespace shoplore {
namespace {

Result<ExitCode> show_checks(const Records& records, const Snapshot& snapshot, Output output,
                             Session& session) {
  const Vocabulary& vocabulary = records.vocabulary();
  const auto checks = trust_in_checks(snapshot.ledger(), vocabulary);
  if (!checks) return fail(checks.error());
  const auto conditions = trust_by_condition(records.store(), vocabulary);
  if (!conditions) return fail(conditions.error());
  session.out << (output == Output::kJson
                      ? check_trust_json(*checks, *conditions) + "\n"
                      : print_check_trust(*checks, *conditions, vocabulary, session.page));
  const bool any_shown = std::any_of(checks->begin(), checks->end(), [](const CheckTrust& check) {
    return check.done >= kEnoughToTrust;
  });
  return any_shown ? ExitCode::kAnswered : ExitCode::kNothingFound;
}

}  // namespace

Result<ExitCode> run(const TrackRecordVerbOptions& options, Session& session) {
  auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto snapshot = Snapshot::open(session.folder);
  if (!snapshot) return fail(snapshot.error());
  if (options.checks) return show_checks(*records, **snapshot, options.output, session);
  const Ledger& ledger = (*snapshot)->ledger();
  const auto cases = past_cases(records->store(), records->vocabulary(), ledger);
  if (!cases) return fail(cases.error());
  const Recogniser recogniser(records->vocabulary());
  const auto record = track_record(ledger, (*snapshot)->ranking(), *cases,
                                   {options.folds, options.seed, 1, &recogniser});
  if (!record) return fail(record.error());
  session.out << (options.output == Output::kJson ? track_record_json(*record) + "\n"
                                                  : print_track_record(*record));
  return record->cases > 0 ? ExitCode::kAnswered : ExitCode::kNothingFound;
}

}  // namespace shoplore
