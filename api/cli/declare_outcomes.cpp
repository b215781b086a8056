// The verb that asks and says what became of repairs: outcomes.
#include "api/cli/declared_verbs.hpp"
#include "api/cli/option_values.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

struct Typed {
  OutcomeOptions outcome;
  std::string status, on, reason, cause;
  std::int64_t mileage = -1;
  std::size_t limit = 0;
  bool json = false;
};

template <class Enum>
Result<Enum> named(const std::string& text, const std::string& place) {
  const auto value = enum_from_name<Enum>(text);
  if (value) return *value;
  return fail(ErrorCode::kInvalidInput, place,
              "\"" + text + "\" given, expected " + expected_names<Enum>());
}

Result<Command> read_due(const Typed& typed) {
  const OutcomeReport& report = typed.outcome.report;
  const bool says = !typed.on.empty() || !typed.reason.empty() || !typed.cause.empty() ||
                    !report.comeback.empty() || typed.mileage >= 0;
  if (says) {
    return fail(ErrorCode::kInvalidInput, "command line",
                "expected REF and what became of it before the other options");
  }
  OutcomesDueOptions due;
  if (typed.limit > 0) due.limit = typed.limit;
  due.output = output_of(typed.json);
  return due;
}

Result<void> read_report(OutcomeReport& report, const Typed& typed) {
  const auto status = named<OutcomeStatus>(typed.status, "STATUS");
  if (!status) return fail(status.error());
  report.status = *status;
  if (!typed.on.empty()) {
    const auto day = parse_day(typed.on, "--on");
    if (!day) return fail(day.error());
    report.as_of = *day;
  }
  if (!typed.reason.empty()) {
    const auto reason = named<ComebackReason>(typed.reason, "--reason");
    if (!reason) return fail(reason.error());
    report.reason = *reason;
  }
  if (typed.mileage >= 0) report.mileage_km = Kilometres{typed.mileage};
  if (typed.cause.empty()) return {};
  const CauseParts cause = cause_parts(typed.cause);
  if (cause.component.empty() || cause.failure.empty()) {
    return fail(ErrorCode::kInvalidInput, "--cause",
                "expected component:failure, as in wastegate_linkage:seized_open");
  }
  report.right_cause = RightCause{cause.component, cause.failure};
  return {};
}

Result<Command> read_outcome(const Typed& typed) {
  if (typed.outcome.ref.empty()) return read_due(typed);
  if (typed.status.empty()) {
    return fail(
        ErrorCode::kInvalidInput, "command line",
        "expected what became of " + typed.outcome.ref + ": " + expected_names<OutcomeStatus>());
  }
  if (typed.limit > 0) return fail(ErrorCode::kInvalidInput, "--limit", "is of the list only");
  OutcomeOptions outcome = typed.outcome;
  if (auto read = read_report(outcome.report, typed); !read) return fail(read.error());
  outcome.output = output_of(typed.json);
  return outcome;
}

}  // namespace

void declare_outcomes(CLI::App& app, DeclaredVerbs& verbs) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* sub = verb(app, "outcomes", "Repairs not heard of since; or what became of one");
  sub->add_option("ref", typed->outcome.ref, "The repaired case; without it, which are due");
  sub->add_option("status", typed->status, "stayed_fixed, came_back or unknown");
  sub->add_option("--on", typed->on, "The day it was so (default: today)");
  sub->add_option("--mileage", typed->mileage, "What the odometer said then, in km")
      ->check(CLI::Range(0, 3'000'000));
  sub->add_option("--reason", typed->reason,
                  "Of came_back: same_cause, wrong_cause, part, workmanship, unrelated");
  sub->add_option("--of", typed->outcome.report.comeback, "The case it came back as");
  sub->add_option("--cause", typed->cause, "Of wrong_cause: the right one (default: that of --of)");
  sub->add_option("--limit", typed->limit, "Repairs listed (default: 20)")
      ->check(CLI::Range(1, 10'000));
  add_json(sub, typed->json);
  verbs.push_back({sub, [typed] { return read_outcome(*typed); }});
}

}  // namespace shoplore
