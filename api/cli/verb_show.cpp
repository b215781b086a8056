#include "api/cli/print_case.hpp"
#include "api/cli/print_outcomes.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/record_json.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {

namespace {

// How long what was done in this case has lasted here, of the same cause.
Result<std::string> lasting_text(const Case& record, const Records& records, const Page& page) {
  const auto fixes = fix_keys(record, records.vocabulary());
  if (record.state != CaseState::kClosed || fixes.empty()) return std::string();
  const std::string cause = cause_key(*record.cause, records.vocabulary());
  const auto histories = histories_with_cause(records.store(), records.vocabulary(), cause);
  if (!histories) return fail(histories.error());
  std::string text = "\n" + Ink(page.colour).heading("How long such repairs lasted here") + "\n";
  for (const StayedFixed& group : stayed_fixed_by_fixes(fix_lives(*histories), cause)) {
    if (group.fixes == fixes) text += print_stayed_fixed(group, records.vocabulary(), page);
  }
  return text;
}

Result<std::string> record_text(const StoredCase& stored, const Records& records,
                                const Page& page) {
  std::string text = print_case(stored, records.vocabulary(), page);
  const auto offers = comeback_offers(stored.record, records.store(), records.vocabulary());
  if (!offers) return fail(offers.error());
  if (!offers->empty()) {
    text += "\n" + print_comeback_offers(*offers, stored.record.ref, records.vocabulary(), page);
  }
  const auto lasting = lasting_text(stored.record, records, page);
  if (!lasting) return fail(lasting.error());
  return text + *lasting;
}

}  // namespace

Result<ExitCode> run(const ShowOptions& options, Session& session) {
  const auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto stored = records->store().read(options.ref);
  if (!stored) return fail(stored.error());
  const bool json = options.output == Output::kJson;
  if (options.what == ShowOptions::What::kRecord) {
    if (json) {
      session.out << case_to_json(stored->record) << "\n";
      return ExitCode::kAnswered;
    }
    const auto text = record_text(*stored, *records, session.page);
    if (!text) return fail(text.error());
    session.out << *text;
    return ExitCode::kAnswered;
  }
  const auto history = records->store().history(stored->id);
  if (!history) return fail(history.error());
  session.out << (json ? history_json(*history) + "\n" : print_history(*history, session.page));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
