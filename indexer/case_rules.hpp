// The rules a case must keep beyond its form: what a state needs, dates in order, plausible
// numbers, ids the vocabulary knows.
//
// Does not read JSON (case_json.hpp) and changes nothing. Pure, any thread. An empty list means
// the record may be stored.
#pragma once

#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/result.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// Every broken rule with its JSON Pointer, in the record's order. The rules:
// - closed: needs closed and cause; cause and outcome only in closed or withdrawn, a closing date
//   in ended too: who reopens a case takes them away (the history keeps them);
//   ended: needs ended; no_complaint: neither complaint, symptoms, codes nor cause;
// - dates: opened <= closed <= outcome as_of, earlier repair and warning dates <= opened
//   or closed; none after the year 2199;
// - numbers: model_year 1950..2100, mileage 0..3,000,000 km, minutes, hours, costs and quantities
//   not negative, expected low <= high;
// - the odometer of an outcome not below that of the case;
// - an outcome reason only of came_back; codes only with scanned = yes (or left out, which then
//   means yes); work signs only with work_looked_for = yes likewise;
// - ids name entries of their kind (retired and aliased ones too: history keeps its words);
//   codes have the form of SAE J2012, failure_type is two hex digits; token is empty or 32 hex
//   digits; ref, follows and visit ref are [A-Za-z0-9._-]{1,40}; a symptom, code (per status, seen
//   and module) or fact stands once; fact names hold no '='.
[[nodiscard]] std::vector<Problem> broken_rules(const Case& record, const Vocabulary& vocabulary);

// broken_rules as a Result: kInvalidInput with every problem, or the record's success.
[[nodiscard]] Result<void> check_rules(const Case& record, const Vocabulary& vocabulary);

}  // namespace shoplore
