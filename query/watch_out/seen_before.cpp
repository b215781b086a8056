#include "query/watch_out/seen_before.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/evidence_item.hpp"
#include "indexer/quantities.hpp"
#include "query/outcomes/comeback_offer.hpp"
#include "query/watch_out/at_stake.hpp"

namespace shoplore {
namespace {

// Visits named one by one; of more, the last ones.
constexpr std::size_t kVisitsTold = 6;

std::string outcome_text(const PastVisit& visit) {
  if (!visit.outcome) return "";
  switch (visit.outcome->status) {
    case OutcomeStatus::kStayedFixed:
      return "; stayed fixed";
    case OutcomeStatus::kCameBack:
      return "; came back";
    case OutcomeStatus::kUnknown:
      break;
  }
  return "";
}

std::string what_was_found(const PastVisit& visit, const Vocabulary& vocabulary) {
  if (visit.state == CaseState::kNoComplaint) {
    std::string kind(name_of(visit.kind));
    std::replace(kind.begin(), kind.end(), '_', ' ');
    return kind + ", no complaint";
  }
  std::string text;
  for (const std::string& symptom : visit.symptoms) {
    text += (text.empty() ? "" : ", ") + vocabulary.display_name(EntryKind::kSymptom, symptom);
  }
  for (const std::string& code : visit.codes) text += (text.empty() ? "" : ", ") + code;
  if (!text.empty()) text += ": ";
  const bool is_open = visit.state == CaseState::kOpen || visit.state == CaseState::kWaiting;
  text += is_open               ? "still open"
          : visit.cause.empty() ? "no cause found"
                                : display_cause_key(visit.cause, vocabulary);
  if (!visit.fixes.empty()) text += "; " + display_fixes(visit.fixes, vocabulary);
  return text + outcome_text(visit);
}

std::string told(const PastVisit& visit, const Vocabulary& vocabulary) {
  std::string text = format_date(visit.opened);
  if (visit.km) text += " at " + thousands(visit.km->value) + " km";
  return text + " " + what_was_found(visit, vocabulary) + " (" + visit.ref + ")";
}

// The question as a visit of that day, its cause not known yet.
PastVisit visit_of(const WatchQuestion& question, const VehicleNow& vehicle) {
  PastVisit now;
  now.ref = vehicle.ref;
  now.state = CaseState::kOpen;
  now.opened = *vehicle.day;
  for (const EvidenceItem& item : question.items) {
    if (item.value != "present") continue;
    const std::string_view kind = kind_of_attribute(item.attribute);
    if (kind == "symptom") now.symptoms.emplace_back(id_of_attribute(item.attribute));
    if (kind == "code") now.codes.emplace_back(id_of_attribute(item.attribute));
  }
  std::sort(now.symptoms.begin(), now.symptoms.end());
  std::sort(now.codes.begin(), now.codes.end());
  return now;
}

// The last repair this may be a comeback of, by what was found or by a cause likely now; null when
// there is none.
const PastVisit* may_be_comeback_of(const VehicleHistory& history, PastVisit now,
                                    const WatchQuestion& question) {
  std::vector<std::string> causes{""};
  for (const LikelyRow& likely : likely_rows(question)) causes.push_back(likely.key());
  for (auto visit = history.visits.rbegin(); visit != history.visits.rend(); ++visit) {
    for (const std::string& cause : causes) {
      now.cause = cause;
      if (may_be_comeback(*visit, now, history)) return &*visit;
    }
  }
  return nullptr;
}

std::string comeback_text(const PastVisit& visit, Date day, const Vocabulary& vocabulary) {
  return fmt::format(". This may be {} coming back, {} days after: {}", visit.ref,
                     (day.days - visit.done().days).count(),
                     display_fixes(visit.fixes, vocabulary));
}

// The visit with the highest reading, where that is above the present one; null where none is.
const PastVisit* odometer_higher_at(const std::vector<PastVisit>& visits,
                                    std::optional<Kilometres> now) {
  const auto highest =
      std::max_element(visits.begin(), visits.end(), [](const PastVisit& a, const PastVisit& b) {
        return a.km.value_or(Kilometres{}) < b.km.value_or(Kilometres{});
      });
  return now && highest->km && *highest->km > *now ? &*highest : nullptr;
}

std::string odometer_text(const PastVisit& visit, Kilometres now) {
  return fmt::format(
      "The odometer stands at {} km, lower than the {} km of {} ({}): one reading is wrong, it was "
      "changed, or this is another vehicle. ",
      thousands(now.value), thousands(visit.km->value), format_date(visit.opened), visit.ref);
}

}  // namespace

Result<std::optional<Warning>> warn_of_visits_before(const VehicleNow& vehicle,
                                                     const WatchQuestion& question,
                                                     const Store& store) {
  auto history = history_of_vehicle(store, question.vocabulary, vehicle.token);
  if (!history && history.error().code == ErrorCode::kNotFound) return std::optional<Warning>{};
  if (!history) return fail(history.error());
  std::vector<PastVisit> visits = history->visits;
  std::erase_if(visits, [&](const PastVisit& visit) {
    if (vehicle.ref.empty()) return false;
    return visit.ref == vehicle.ref || (vehicle.day && visit.opened > *vehicle.day);
  });
  if (visits.empty()) return std::optional<Warning>{};
  Warning warning;
  warning.kind = WarningKind::kSeenBefore;
  warning.stated = Stated::kYes;
  warning.text = visits.size() == 1
                     ? "This vehicle was here once before"
                     : fmt::format("This vehicle was here {} times before", visits.size());
  const std::size_t first = visits.size() - std::min(visits.size(), kVisitsTold);
  if (first > 0) warning.text += fmt::format("; the last {}", kVisitsTold);
  for (std::size_t i = first; i < visits.size(); ++i) {
    warning.text += (i == first ? ": " : ". ") + told(visits[i], question.vocabulary);
  }
  const bool may_be_back = vehicle.day && vehicle.follows.empty();
  const PastVisit* before =
      may_be_back ? may_be_comeback_of(*history, visit_of(question, vehicle), question) : nullptr;
  const PastVisit& last = before == nullptr ? visits.back() : *before;
  warning.about = last.ref;
  warning.cause = last.cause;
  warning.minutes =
      last.cause.empty() ? kUsualRepairMinutes : minutes_of_cause(last.cause, question.figures);
  warning.how_often = before == nullptr ? kStoryOnly : 1;
  if (before != nullptr) {
    warning.text += comeback_text(*before, *vehicle.day, question.vocabulary);
  }
  // A repair chosen by the story of another vehicle is at stake, whichever is the dearest here.
  if (const PastVisit* higher = odometer_higher_at(visits, vehicle.km)) {
    warning.text = odometer_text(*higher, *vehicle.km) + warning.text;
    for (const LikelyRow& likely : likely_rows(question)) {
      warning.minutes = std::max(warning.minutes, minutes_of_cause(likely.key(), question.figures));
    }
    warning.how_often = 1;
  }
  for (auto visit = visits.rbegin(); visit != visits.rend(); ++visit) {
    if (warning.cases.size() == kCasesBehind) break;
    warning.cases.push_back(visit->id);
  }
  return std::optional(std::move(warning));
}

}  // namespace shoplore
