#include "indexer/outcome_report.hpp"

#include <fmt/format.h>

#include "indexer/case_keys.hpp"
#include "indexer/case_links.hpp"
#include "indexer/case_rules.hpp"

namespace shoplore {
namespace {

tl::unexpected<Error> refuse(std::string place, std::string why) {
  return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
}

Result<void> check_report(const OutcomeReport& report, Date today) {
  const bool came_back = report.status == OutcomeStatus::kCameBack;
  if (!came_back && report.reason) return refuse("/reason", "only what came_back has a reason");
  if (!came_back && !report.comeback.empty()) {
    return refuse("/of", "only what came_back has a case it came back as");
  }
  if (report.right_cause && report.reason != ComebackReason::kWrongCause) {
    return refuse("/cause", "only a comeback for wrong_cause changes the cause");
  }
  if (report.as_of && *report.as_of > today) {
    return refuse("/as_of", fmt::format("is after today, {}", format_date(today)));
  }
  return {};
}

// Places of a rule broken by the earlier case or by the newer, as the report names them.
Error at_report(Error error, bool of_newer) {
  const auto renamed = [&](const std::string& place) -> std::string {
    if (of_newer) return "/of";
    return place.starts_with("/outcome/") ? place.substr(8) : place;
  };
  error.place = renamed(error.place);
  for (Problem& problem : error.problems) problem.place = renamed(problem.place);
  if (error.code == ErrorCode::kInvalidInput) error.message = "the outcome breaks a rule";
  return error;
}

bool is_wrong_cause(const std::optional<Outcome>& outcome) {
  return outcome && outcome->reason == ComebackReason::kWrongCause;
}

// The cause a wrong one is revised to.
Result<Cause> right_cause(const Case& earlier, const OutcomeReport& report,
                          const std::optional<Cause>& newer, const Vocabulary& vocabulary) {
  if (!report.right_cause && !newer) {
    return refuse("/cause", report.comeback.empty()
                                ? "wrong_cause needs the right one"
                                : "wrong_cause needs the right one: " + report.comeback +
                                      " has none yet; give it, or close that case first");
  }
  Cause right;
  if (report.right_cause) {
    right = {report.right_cause->component, report.right_cause->failure, Proof::kPresumed};
  } else {
    right = *newer;
  }
  const std::string key = cause_key(right, vocabulary);
  if (newer && cause_key(*newer, vocabulary) == key) right.proof = newer->proof;
  // Said again after it was revised, it is the recorded one.
  if (!is_wrong_cause(earlier.outcome) && cause_key(*earlier.cause, vocabulary) == key) {
    return refuse("/cause", fmt::format("{} is the cause recorded already", key));
  }
  return right;
}

Result<Case> with_outcome(Case earlier, const OutcomeReport& report,
                          const std::optional<StoredCase>& newer, Date today,
                          const Vocabulary& vocabulary) {
  Outcome outcome{report.status, report.as_of, report.mileage_km, report.reason};
  if (!outcome.as_of) outcome.as_of = newer ? newer->record.opened : today;
  if (!outcome.mileage_km && newer) outcome.mileage_km = newer->record.vehicle.mileage_km;
  if (report.reason == ComebackReason::kWrongCause) {
    const auto found = newer ? newer->record.cause : std::nullopt;
    auto cause = right_cause(earlier, report, found, vocabulary);
    if (!cause) return fail(cause.error());
    earlier.cause = std::move(*cause);
  }
  earlier.outcome = outcome;
  if (auto kept = check_rules(earlier, vocabulary); !kept) {
    return fail(at_report(kept.error(), false));
  }
  return earlier;
}

// The comeback as it will follow the earlier case; nothing when none is named.
Result<std::optional<StoredCase>> linked_comeback(const Records& records, const Case& earlier,
                                                  const OutcomeReport& report) {
  if (report.comeback.empty()) return std::optional<StoredCase>();
  auto newer = records.store().read(report.comeback);
  if (!newer) return fail(newer.error());
  Case& record = newer->record;
  if (record.ref == earlier.ref) return refuse("/of", "a case cannot be a comeback of itself");
  if (!record.follows.empty() && record.follows != earlier.ref) {
    return refuse("/of", fmt::format("{} follows {} already", record.ref, record.follows));
  }
  record.follows = earlier.ref;
  if (auto linked = check_link(record, records.store()); !linked) {
    return fail(at_report(linked.error(), true));
  }
  return std::optional(std::move(*newer));
}

}  // namespace

Result<Recorded> record_outcome(Records& records, std::string_view ref,
                                std::optional<Revision> expected, const OutcomeReport& report,
                                Date today, Role role, const std::optional<Receipt>& receipt) {
  if (auto sound = check_report(report, today); !sound) return fail(sound.error());
  auto earlier = records.store().read(ref);
  if (!earlier) return fail(earlier.error());
  if (earlier->record.state != CaseState::kClosed) {
    return refuse(std::string(ref), fmt::format("is {}; only a closed case has an outcome",
                                                name_of(earlier->record.state)));
  }
  if (expected && *expected != earlier->revision) {
    return fail(ErrorCode::kConflict, std::string(ref),
                fmt::format("is at revision {} now", earlier->revision.value));
  }
  auto newer = linked_comeback(records, earlier->record, report);
  if (!newer) return fail(newer.error());
  auto revised = with_outcome(earlier->record, report, *newer, today, records.vocabulary());
  if (!revised) return fail(revised.error());
  if (*newer) {
    auto linked = records.replace(**newer, (*newer)->record, role);
    if (!linked) return fail(at_report(linked.error(), true));
  }
  return records.replace(*earlier, std::move(*revised), role, receipt);
}

}  // namespace shoplore
