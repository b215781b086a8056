#include "query/filter_query.hpp"

#include <algorithm>
#include <vector>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

double number_of(Kilometres value) {
  return static_cast<double>(value.value);
}
double number_of(int value) {
  return value;
}

// Half open, on whole numbers: x < high is x <= high - 1.
template <class T>
void add_band(const Band<T>& band, Xapian::valueno slot, std::vector<Xapian::Query>& parts) {
  if (band.is_open()) return;
  const std::string low = band.low ? Xapian::sortable_serialise(number_of(*band.low)) : "";
  if (!band.high) {
    parts.emplace_back(Xapian::Query::OP_VALUE_GE, slot, low);
    return;
  }
  // A document without the value has the empty string, which every range from a number excludes.
  const std::string from = band.low ? low : Xapian::sortable_serialise(-1e18);
  parts.emplace_back(Xapian::Query::OP_VALUE_RANGE, slot, from,
                     Xapian::sortable_serialise(number_of(*band.high) - 1));
}

}  // namespace

EvidenceItem name_item(std::string attribute, const std::string& name) {
  return {std::move(attribute), lower_case(name)};
}

Xapian::Query filter_query(const Filter& filter) {
  std::vector<Xapian::Query> parts;
  if (!filter.make.empty()) parts.emplace_back(item_term(name_item("make", filter.make)));
  if (!filter.engine_family.empty()) {
    parts.emplace_back(item_term(name_item("engine_family", filter.engine_family)));
  }
  add_band(filter.mileage, kMileageSlot, parts);
  add_band(filter.model_year, kModelYearSlot, parts);
  if (filter.closed_since) {
    const auto day = static_cast<double>(filter.closed_since->days.time_since_epoch().count());
    parts.emplace_back(Xapian::Query::OP_VALUE_GE, kClosedSlot, Xapian::sortable_serialise(day));
  }
  if (!filter.proofs.empty()) {
    std::vector<std::string> proofs;
    for (const Proof proof : filter.proofs) proofs.push_back(proof_term(proof));
    parts.emplace_back(Xapian::Query::OP_OR, proofs.begin(), proofs.end());
  }
  // The empty term matches everything. Not Query::MatchAll: that is one global object whose
  // reference count threads would change at once.
  if (parts.empty()) return Xapian::Query(std::string());
  return Xapian::Query(Xapian::Query::OP_AND, parts.begin(), parts.end());
}

}  // namespace shoplore
