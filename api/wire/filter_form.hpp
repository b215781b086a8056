// A Filter as JSON, for questions and answers alike. Include only from sources of api/wire/.
//
//   {"make":"Brackwater","engine_family":"BW16D","mileage_km":{"low":100000,"high":150000},
//    "model_year":{"low":2014,"high":2017},"closed_since":"2024-01-01","proof":["seen","measured"]}
//
// Bands are half-open, low <= x < high; either end may be left out. An empty filter is {}.
#pragma once

#include "indexer/json_form.hpp"
#include "query/case_counter.hpp"

namespace shoplore {

template <class T>
struct BandForm {
  std::optional<T> low, high;
};

struct FilterForm {
  std::string make, engine_family;
  std::optional<BandForm<Kilometres>> mileage;
  std::optional<BandForm<int>> model_year;
  std::optional<Date> closed_since;
  std::vector<Proof> proof;
};

template <class Io>
void fields(Io& io, Of<BandForm<Kilometres>> auto& band) {
  io.optional("low", band.low);
  io.optional("high", band.high);
}

template <class Io>
void fields(Io& io, Of<BandForm<int>> auto& band) {
  io.optional("low", band.low);
  io.optional("high", band.high);
}

template <class Io>
void fields(Io& io, Of<FilterForm> auto& f) {
  io.optional("make", f.make);
  io.optional("engine_family", f.engine_family);
  io.optional("mileage_km", f.mileage);
  io.optional("model_year", f.model_year);
  io.optional("closed_since", f.closed_since);
  io.optional("proof", f.proof);
}

[[nodiscard]] FilterForm form_of_filter(const Filter& filter);
[[nodiscard]] Filter filter_of_form(const FilterForm& form);

}  // namespace shoplore
