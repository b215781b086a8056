#include <fmt/format.h>

#include "api/cli/closing_notes.hpp"
#include "api/cli/input_file.hpp"
#include "api/cli/print_outcomes.hpp"
#include "api/cli/print_understood.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/record_json.hpp"
#include "indexer/evidence_item.hpp"
#include "indexer/text.hpp"
#include "query/outcomes/comeback_offer.hpp"

namespace shoplore {

namespace {

// Text from the command line is not yet known to be UTF-8, which the recogniser needs.
Result<void> check_text(const std::string& text) {
  if (text.size() > kMaxTextBytes) {
    return fail(ErrorCode::kTooLarge, "text",
                fmt::format("{} bytes long, at most {} are taken", text.size(), kMaxTextBytes));
  }
  if (words_of(text).empty()) return fail(ErrorCode::kInvalidInput, "text", "is empty");
  if (!is_utf8(text)) return fail(ErrorCode::kInvalidInput, "text", "is not valid UTF-8");
  for (const char c : text) {
    if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') {
      return fail(ErrorCode::kInvalidInput, "text", "contains a control character");
    }
  }
  return {};
}

Result<Recorded> add_text(const AddOptions& options, Records& records) {
  if (auto good = check_text(options.text); !good) return fail(good.error());
  Intake intake;
  intake.identity = {options.vin, options.plate, options.customer};
  intake.record.opened = today();
  intake.record.job_number = options.job_number;
  intake.record.complaint = options.text;
  add_recognised(intake.record, records.recogniser().recognise(options.text));
  return records.add(std::move(intake), Role::kTechnician);
}

Result<Recorded> change_case(const AddOptions& options, Session& session, Records& records) {
  if (options.restore) return records.restore(options.to, *options.restore, Role::kTechnician);
  if (options.json_file.empty()) {
    if (auto good = check_text(options.text); !good) return fail(good.error());
    const Identity identity{options.vin, options.plate, options.customer};
    return records.add_findings(options.to, options.text, Role::kTechnician, identity);
  }
  const auto patch = read_input(options.json_file, session.in, kMaxCaseBytes);
  if (!patch) return fail(patch.error());
  return records.change(options.to, options.if_revision, *patch, Role::kTechnician);
}

Result<Recorded> record(const AddOptions& options, Session& session, Records& records) {
  if (!options.to.empty()) return change_case(options, session, records);
  if (options.json_file.empty()) return add_text(options, records);
  const auto text = read_input(options.json_file, session.in, kMaxCaseBytes);
  if (!text) return fail(text.error());
  auto intake = intake_from_json(*text);
  if (!intake) return fail(intake.error());
  return records.add(std::move(*intake), Role::kTechnician);
}

// What was read out of the text, so that a wrong reading is seen while the vehicle is still there.
Understood understood_of(const std::string& text, const Records& records) {
  Understood understood;
  understood.text = text;
  understood.recognised = records.recogniser().recognise(text);
  Case record;
  add_recognised(record, understood.recognised);
  understood.evidence = evidence_of(record, records.vocabulary());
  for (const Span span : understood.recognised.leftover) {
    understood.not_understood.push_back(text.substr(span.begin, span.end - span.begin));
  }
  return understood;
}

// A vehicle back with what was repaired here before is pointed out until the two are linked.
Result<void> point_out_comeback(const Recorded& recorded, const Records& records,
                                Session& session) {
  const Case& record = recorded.stored.record;
  const auto offers = comeback_offers(record, records.store(), records.vocabulary());
  if (!offers) return fail(offers.error());
  session.err << print_comeback_offers(*offers, record.ref, records.vocabulary(), session.page);
  return {};
}

}  // namespace

Result<ExitCode> run(const AddOptions& options, Session& session) {
  auto records = Records::open(session.folder);
  if (!records) return fail(records.error());
  const auto recorded = record(options, session, *records);
  if (!recorded) return fail(recorded.error());
  for (const std::string& warning : recorded->warnings) {
    session.err << "shoplore add: " << warning << "\n";
  }
  ask_for_later(recorded->stored.record, records->vocabulary(), "add", session.err);
  // It is recorded: whoever took this for a failure would record it twice.
  if (auto shown = point_out_comeback(*recorded, *records, session); !shown) {
    session.err << "shoplore add: " << describe(shown.error()) << "\n";
  }
  if (!options.json_file.empty()) {
    session.out << recorded_json(*recorded) << "\n";
  } else {
    session.out << fmt::format("{} recorded, {}, revision {}\n", recorded->stored.record.ref,
                               name_of(recorded->stored.record.state),
                               recorded->stored.revision.value);
    if (!options.text.empty()) {
      session.out << print_understood(understood_of(options.text, *records), records->vocabulary(),
                                      session.page);
    }
  }
  return ExitCode::kAnswered;
}

}  // namespace shoplore
