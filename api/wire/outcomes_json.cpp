#include "api/wire/outcomes_json.hpp"

#include "api/wire/request_json.hpp"
#include "indexer/case_keys.hpp"
#include "indexer/json_form.hpp"
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

namespace {

void add_cause_and_fixes(Json& json, const std::string& cause,
                         const std::vector<std::string>& fixes, const Vocabulary& vocabulary) {
  const CauseParts parts = cause_parts(cause);
  json["component"] = parts.component;
  json["failure"] = parts.failure;
  json["name"] = display_cause_key(cause, vocabulary);
  json["fixes"] = fixes;
  json["fixes_name"] = display_fixes(fixes, vocabulary);
}

Json comeback_form(const ComebackOffer& offer, const Vocabulary& vocabulary) {
  Json json = {
      {"ref", offer.ref}, {"done", format_date(offer.done)}, {"days_since", offer.since.count()}};
  if (offer.km_since) json["km_since"] = offer.km_since->value;
  add_cause_and_fixes(json, offer.cause, offer.fixes, vocabulary);
  json["shared"] = {{"symptoms", offer.shared.symptoms}, {"codes", offer.shared.codes}};
  json["possible_reasons"] = Json::array();
  for (const ComebackReason reason : offer.possible) {
    json["possible_reasons"].push_back(name_of(reason));
  }
  return json;
}

}  // namespace

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
