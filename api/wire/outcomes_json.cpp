#include "api/wire/outcomes_json.hpp"

#include "api/wire/comeback_form.hpp"
#include "api/wire/request_json.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<RightCause> auto& c) {
  io.required("component", c.component);
  io.required("failure", c.failure);
}

template <class Io>
void fields(Io& io, Of<OutcomeReport> auto& r) {
  io.required("status", r.status);
  io.optional("as_of", r.as_of);
  io.optional("mileage_km", r.mileage_km);
  io.optional("reason", r.reason);
  io.optional("of", r.comeback);
  io.optional("cause", r.right_cause);
}

std::string outcomes_due_json(const OutcomesDue& due, const Vocabulary& vocabulary) {
  Json list = Json::array();
  for (const DueOutcome& each : due.cases) {
    Json json = {{"ref", each.ref},
                 {"job_number", each.job_number},
                 {"vehicle", vehicle_text(each.vehicle)}};
    add_cause_and_fixes(json, each.cause, each.fixes, vocabulary);
    json["done"] = format_date(each.done);
    json["days_since"] = each.since.count();
    if (each.asked) json["asked"] = format_date(*each.asked);
    list.push_back(std::move(json));
  }
  return Json({{"due", list}, {"all", due.all}, {"due_after_days", kDueAfter.count()}}).dump();
}

std::string comeback_json(std::string_view ref, const std::vector<ComebackOffer>& offers,
                          const Vocabulary& vocabulary) {
  Json list = Json::array();
  for (const ComebackOffer& offer : offers) list.push_back(comeback_form(offer, vocabulary));
  return Json({{"ref", ref}, {"offers", list}, {"window_days", kComebackWindow.count()}}).dump();
}

Result<OutcomeReport> outcome_report_from_json(std::string_view text) {
  const auto json = parse_json(text, kMaxRequestBytes);
  if (!json) return fail(json.error());
  return struct_from_json<OutcomeReport>(*json, "the outcome");
}

}  // namespace shoplore
