#include "api/http/filter_query.hpp"

namespace shoplore {

namespace {

template <class T>
Result<void> check_band(const Band<T>& band, std::string place) {
  if (!band.low || !band.high || *band.low < *band.high) return {};
  return fail(ErrorCode::kInvalidInput, std::move(place),
              "low must be below high, or nothing could match");
}

}  // namespace

Filter filter_of(QueryReader& query) {
  constexpr std::int64_t kMostKilometres = 3'000'000;
  const auto year = [&](std::string_view name) -> std::optional<int> {
    const auto number = query.whole(name, 1950, 2101);
    return number ? std::optional<int>(static_cast<int>(*number)) : std::nullopt;
  };
  const auto distance = [&](std::string_view name) -> std::optional<Kilometres> {
    const auto number = query.whole(name, 0, kMostKilometres);
    return number ? std::optional<Kilometres>(Kilometres{*number}) : std::nullopt;
  };
  Filter filter;
  filter.make = query.text("make");
  filter.engine_family = query.text("engine_family");
  filter.mileage = {distance("mileage_km_low"), distance("mileage_km_high")};
  filter.model_year = {year("model_year_low"), year("model_year_high")};
  filter.closed_since = query.day("closed_since");
  filter.proofs = query.names<Proof>("proof");
  return filter;
}

Result<void> check_filter(const Filter& filter) {
  if (auto checked = check_band(filter.mileage, "?mileage_km_low"); !checked) return checked;
  return check_band(filter.model_year, "?model_year_low");
}

}  // namespace shoplore
