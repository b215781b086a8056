#include "api/wire/lately_plot.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/evidence_item.hpp"

namespace shoplore {
namespace {

constexpr int kTicks = 5;
constexpr std::size_t kMonthsBetweenTicks = 3;

PlotAxis months_axis(std::size_t months, std::chrono::year_month last) {
  PlotAxis axis{"month closed", 0, static_cast<double>(months), {}, {}};
  for (std::size_t back = 0; back < months; back += kMonthsBetweenTicks) {
    const std::size_t at = months - 1 - back;
    axis.ticks.insert(axis.ticks.begin(), static_cast<double>(at) + 0.5);
    axis.tick_labels.insert(axis.tick_labels.begin(),
                            month_text(last - std::chrono::months(static_cast<int>(back))));
  }
  return axis;
}

template <class Number>
PlotSeries monthly(const char* name, PlotMark mark, const std::vector<Number>& values) {
  PlotSeries series{name, mark, {}};
  for (std::size_t i = 0; i < values.size(); ++i) {
    series.points.push_back({static_cast<double>(i), static_cast<double>(values[i])});
  }
  series.points.push_back({static_cast<double>(values.size()), series.points.back().y});
  return series;
}

}  // namespace

Plot lately_plot(const LatelyRow& row, std::chrono::year_month last, const Vocabulary& vocabulary) {
  const double most = std::max<double>(*std::max_element(row.drawn.begin(), row.drawn.end()),
                                       *std::max_element(row.usual.begin(), row.usual.end()));
  const WindowRate& window = row.windows.front();
  Plot plot;
  plot.title = display_failure(row.cause, row.engine_family, vocabulary);
  plot.x = months_axis(row.drawn.size(), last);
  plot.y = axis_from_zero("cases a month", std::max(1.0, most), kTicks);
  for (const double tick : plot.y.ticks) plot.y.tick_labels.push_back(fmt::format("{:g}", tick));
  plot.series.push_back(monthly("cases", PlotMark::kBar, row.drawn));
  plot.series.push_back(monthly("to be expected", PlotMark::kStep, row.usual));
  plot.note = fmt::format("last {} months: {} {} where {:.1f} were to be expected", window.months,
                          window.cases, window.cases == 1 ? "case" : "cases", window.expected);
  return plot;
}

std::string display_failure(const CauseParts& cause, const std::string& engine_family,
                            const Vocabulary& vocabulary) {
  const std::string name = display_cause(cause.component, cause.failure, vocabulary);
  if (engine_family.empty()) return name;
  return name + ", " + display_vehicle_item({"engine_family", engine_family});
}

}  // namespace shoplore
