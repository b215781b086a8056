#include "api/http/routes.hpp"
#include "api/wire/answer_json.hpp"
#include "indexer/text.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxPage = 100;
constexpr std::int64_t kDefaultPage = 10;

template <class T>
Result<void> check_band(const Band<T>& band, std::string place) {
  if (!band.low || !band.high || *band.low < *band.high) return {};
  return fail(ErrorCode::kInvalidInput, std::move(place),
              "low must be below high, or nothing could match");
}

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

// Places as this route's caller knows them.
Error as_parameter(Error error) {
  if (error.place == "question") error.place = "?q";
  if (error.place == "cursor") error.place = "?cursor";
  return error;
}

}  // namespace

Reply get_find(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  SearchQuestion question;
  question.text = query.text("q");
  question.filter = filter_of(query);
  question.page_size =
      static_cast<std::uint32_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  question.cursor = query.text("cursor");
  if (const auto read = query.finish(); !read) return refusal(read.error());
  for (const auto& checked : {check_band(question.filter.mileage, "?mileage_km_low"),
                              check_band(question.filter.model_year, "?model_year_low")}) {
    if (!checked) return refusal(checked.error());
  }
  if (words_of(question.text).empty()) {
    return refusal({ErrorCode::kInvalidInput, "?q", "is missing: a search needs words"});
  }
  const auto page = records.find(question);
  if (!page) return refusal(as_parameter(page.error()));
  return {200, "application/json", search_page_json(*page)};
}

}  // namespace shoplore
