#include "api/wire/comeback_form.hpp"

#include "indexer/case_keys.hpp"

namespace shoplore {

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

}  // namespace shoplore
