#include "api/wire/filter_form.hpp"

namespace shoplore {

FilterForm form_of_filter(const Filter& filter) {
  FilterForm form{filter.make, filter.engine_family, {}, {}, filter.closed_since, {}};
  if (!filter.mileage.is_open()) form.mileage = {filter.mileage.low, filter.mileage.high};
  if (!filter.model_year.is_open()) {
    form.model_year = {filter.model_year.low, filter.model_year.high};
  }
  form.proof.assign(filter.proofs.begin(), filter.proofs.end());
  return form;
}

Filter filter_of_form(const FilterForm& form) {
  Filter filter;
  filter.make = form.make;
  filter.engine_family = form.engine_family;
  if (form.mileage) filter.mileage = {form.mileage->low, form.mileage->high};
  if (form.model_year) filter.model_year = {form.model_year->low, form.model_year->high};
  filter.closed_since = form.closed_since;
  filter.proofs.insert(form.proof.begin(), form.proof.end());
  return filter;
}

}  // namespace shoplore
