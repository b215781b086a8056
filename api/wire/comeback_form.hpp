// An offered comeback as JSON, the same in every answer. Include only from sources of api/wire/.
//
//   The form is Offer of outcomes_json.hpp.
#pragma once

#include "indexer/json_form.hpp"
#include "indexer/vocabulary.hpp"
#include "query/outcomes/comeback_offer.hpp"

namespace shoplore {

[[nodiscard]] Json comeback_form(const ComebackOffer& offer, const Vocabulary& vocabulary);

// Component, failure, name, fixes and their name: what a case turned out to be and what was done.
void add_cause_and_fixes(Json& json, const std::string& cause,
                         const std::vector<std::string>& fixes, const Vocabulary& vocabulary);

}  // namespace shoplore
