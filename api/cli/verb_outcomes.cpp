#include <fmt/format.h>

#include <array>

#include "api/cli/closing_notes.hpp"
#include "api/cli/print_outcomes.hpp"
#include "api/cli/print_similar.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/outcomes_json.hpp"
#include "api/wire/record_json.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

// Places of a report as its options.
std::string option_of(const std::string& place) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 7> kOptions{
      {{"/as_of", "--on"},
       {"/mileage_km", "--mileage"},
       {"/reason", "--reason"},
       {"/of", "--of"},
       {"/cause", "--cause"},
       {"/cause/component", "--cause"},
       {"/cause/failure", "--cause"}}};
  for (const auto& [pointer, option] : kOptions) {
    if (place == pointer) return std::string(option);
  }
  return place;
}

Error at_options(Error error) {
  error.place = option_of(error.place);
  for (Problem& problem : error.problems) problem.place = option_of(problem.place);
  return error;
}

// "case-7 came back (wrong cause), as of 2026-03-02; case-9 follows it now. ..."
std::string recorded_text(const Recorded& recorded, const OutcomeReport& report,
                          const Vocabulary& vocabulary) {
  const Case& record = recorded.stored.record;
  std::string text = record.ref + ": " + outcome_text(record.outcome->status);
  if (record.outcome->reason) text += " (" + reason_text(*record.outcome->reason) + ")";
  text += ", as of " + format_date(*record.outcome->as_of);
  if (!report.comeback.empty()) text += "; " + report.comeback + " follows it now";
  text += ".";
  if (report.reason == ComebackReason::kWrongCause) {
    text += fmt::format(" It counts under {} from now on; its history keeps the old cause.",
                        display_cause(record.cause->component, record.cause->failure, vocabulary));
  }
  return text + fmt::format(" Revision {}.", recorded.stored.revision.value);
}

}  // namespace

Result<ExitCode> run(const OutcomesDueOptions& options, Session& session) {
  const auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto due = outcomes_due(records->store(), records->vocabulary(), today(), options.limit);
  if (!due) return fail(due.error());
  session.out << (options.output == Output::kJson
                      ? outcomes_due_json(*due, records->vocabulary()) + "\n"
                      : print_outcomes_due(*due, records->vocabulary(), session.page));
  return due->cases.empty() ? ExitCode::kNothingFound : ExitCode::kAnswered;
}

Result<ExitCode> run(const OutcomeOptions& options, Session& session) {
  auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto recorded =
      record_outcome(*records, options.ref, {}, options.report, today(), Role::kTechnician);
  if (!recorded) return fail(at_options(recorded.error()));
  ask_for_later(recorded->stored.record, records->vocabulary(), "outcomes", session.err);
  session.out << (options.output == Output::kJson
                      ? recorded_json(*recorded) + "\n"
                      : hang("", recorded_text(*recorded, options.report, records->vocabulary()),
                             session.page.width));
  return ExitCode::kAnswered;
}

}  // namespace shoplore
