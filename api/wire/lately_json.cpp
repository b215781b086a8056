#include "api/wire/lately_json.hpp"

#include <cmath>

#include "api/wire/lately_form.hpp"

namespace shoplore {
namespace {

Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

Json with_interval(const char* name, double value, double low, double high) {
  return {{name, number(value)},
          {"low", number(low)},
          {"high", number(high)},
          {"confidence", kShownConfidence}};
}

Json window_json(const WindowRate& window) {
  const double months = static_cast<double>(window.months);
  const Interval cases = poisson_mean_interval(window.cases, kShownConfidence);
  const RateRatio& rate = window.rate;
  return {{"months", window.months},
          {"cases", window.cases},
          {"before", window.before},
          {"expected", window.expected},
          {"a_month",
           with_interval("cases", window.cases / months, cases.low / months, cases.high / months)},
          {"ratio", with_interval("value", rate.ratio, rate.low, rate.high)},
          {"p", rate.p},
          {"q", window.q ? Json(*window.q) : Json(nullptr)}};
}

Json sum_json(const std::optional<SumAbove>& above) {
  if (!above) return nullptr;
  return {{"sum", above->sum},
          {"signals_at", number(above->interval)},
          {"began", above->sum > 0 ? Json(month_text(above->began)) : Json(nullptr)}};
}

Json family_json(const std::string& family) {
  return family.empty() ? Json(nullptr) : Json(family);
}

Json row_json(const LatelyRow& row) {
  Json windows = Json::array(), earlier = Json::array();
  for (const WindowRate& window : row.windows) windows.push_back(window_json(window));
  for (const EarlierYear& year : row.earlier) {
    earlier.push_back({{"year", year.year}, {"cases", year.cases}});
  }
  return {{"component", row.cause.component},
          {"failure", row.cause.failure},
          {"engine_family", family_json(row.engine_family)},
          {"change", name_of(row.change)},
          {"season", name_of(row.season)},
          {"windows", windows},
          {"sum_above", sum_json(row.sum)},
          {"same_three_months", earlier},
          {"by_month", row.drawn},
          {"usual_by_month", row.usual}};
}

Json pairing_json(const NewPairing& pairing) {
  return {{"component", pairing.cause.component},
          {"failure", pairing.cause.failure},
          {"engine_family", pairing.engine_family},
          {"cases", pairing.cases},
          {"first", month_text(pairing.first)},
          {"of_the_failure_before", pairing.cause_before},
          {"of_the_family_before", pairing.family_before}};
}

}  // namespace

Json lately_form(const Lately& lately) {
  Json windows = Json::array(), rows = Json::array(), pairings = Json::array();
  for (std::size_t i = 0; i < kLatelyMonths.size(); ++i) {
    windows.push_back({{"months", kLatelyMonths[i]}, {"cases", lately.cases_lately[i]}});
  }
  for (const LatelyRow& row : lately.rows) rows.push_back(row_json(row));
  for (const NewPairing& pairing : lately.pairings) pairings.push_back(pairing_json(pairing));
  Json months = nullptr;
  if (lately.cases > 0) {
    months = {{"first", month_text(lately.first)}, {"last", month_text(lately.last)}};
  }
  return {{"months", months},
          {"cases", lately.cases},
          {"cases_lately", windows},
          {"enough_to_compare", lately.compared > 0},
          {"tested", lately.tested},
          {"shown_at", kShownRate},
          {"rows", rows},
          {"pairings", pairings}};
}

std::string lately_json(const Lately& lately) {
  return lately_form(lately).dump();
}

}  // namespace shoplore
