#include "api/wire/mileage_plot.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

constexpr int kTicks = 8, kFitPoints = 120;
constexpr double kThousand = 1'000;

PlotSeries counted(const LifeAnswer& life) {
  PlotSeries series{"counted", PlotMark::kStep, {{life.starts / kThousand, 1}}};
  for (const SurvivalStep& step : life.curve->steps) {
    series.points.push_back({step.time / kThousand, step.survival});
  }
  series.points.push_back({life.curve->longest / kThousand, series.points.back().y});
  return series;
}

PlotBand interval(const LifeAnswer& life) {
  PlotBand band{"90 % interval", {}, life.curve->longest / kThousand};
  for (const SurvivalStep& step : life.curve->steps) {
    const auto at = survival_at(*life.curve, step.time);
    if (!at || !at->interval) continue;
    band.steps.push_back({step.time / kThousand, at->interval->low, at->interval->high});
  }
  return band;
}

PlotSeries fitted(const LifeAnswer& life) {
  PlotSeries series{"fitted Weibull", PlotMark::kLine, {}};
  for (int i = 0; i <= kFitPoints; ++i) {
    const double km = life.starts + (life.longest - life.starts) * i / kFitPoints;
    series.points.push_back({km / kThousand, fitted_share_whole(life, km)});
  }
  return series;
}

}  // namespace

Plot mileage_plot(const FailureMileage& answer, const Vocabulary& vocabulary) {
  const LifeAnswer& life = answer.first;
  Plot plot;
  plot.title = display_cause_key(answer.cause, vocabulary) + ": share still whole";
  plot.note = fmt::format("{} of {} followed failed. A workshop sees only what comes in.",
                          life.failures, life.lives);
  if (!life.curve) {
    plot.note += " Too few failures for a curve.";
    return plot;
  }
  plot.x = axis_from_zero("thousand km", life.longest / kThousand, kTicks);
  for (const double tick : plot.x.ticks) plot.x.tick_labels.push_back(fmt::format("{:g}", tick));
  plot.y = {life.starts > 0
                ? fmt::format("of those whole at {:.0f} thousand km", life.starts / kThousand)
                : std::string("of all from new"),
            0,
            1,
            {0, .25, .5, .75, 1},
            {"0 %", "25 %", "50 %", "75 %", "100 %"}};
  plot.bands.push_back(interval(life));
  plot.series.push_back(counted(life));
  if (life.fit) plot.series.push_back(fitted(life));
  return plot;
}

}  // namespace shoplore
