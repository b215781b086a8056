// A plot as plain data: two axes, lines and steps over them, a band where there is an interval.
//
// What is shown is decided once and drawn twice: svg_plot.hpp for paper and screens, text_plot.hpp
// (in cli/) for a terminal. Units and words stand in the labels; the drawers know neither.
// Plain values, any thread.
#pragma once

#include <string>
#include <vector>

namespace shoplore {

struct PlotAxis {
  std::string label;
  double low = 0, high = 1;              // Requires: low < high
  std::vector<double> ticks;             // within low and high
  std::vector<std::string> tick_labels;  // as many as ticks
};

struct PlotPoint {
  double x = 0, y = 0;
};

// kStep holds each y until the next x; kLine joins the points; kBar stands on the axis from each x
// to the next, and the last point only ends the last bar.
enum class PlotMark { kStep, kLine, kBar };

struct PlotSeries {
  std::string name;
  PlotMark mark = PlotMark::kLine;
  std::vector<PlotPoint> points;  // by x, which does not fall
};

struct PlotBandStep {
  double x = 0, low = 0, high = 0;
};

// An interval that holds from each x until the next; ends at `end`.
struct PlotBand {
  std::string name;
  std::vector<PlotBandStep> steps;  // by x
  double end = 0;
};

// Points outside the axes are cut off at their edges.
struct Plot {
  std::string title;
  PlotAxis x, y;
  std::vector<PlotBand> bands;
  std::vector<PlotSeries> series;
  std::string note;  // beneath; why there is nothing to draw, when there is nothing
};

// Whether there is anything to draw.
[[nodiscard]] inline bool is_empty(const Plot& plot) {
  return plot.series.empty() && plot.bands.empty();
}

// An axis from 0 with about `wanted` ticks at round numbers (1, 2 or 5 times a power of ten), up to
// the first of them at or beyond `greatest`; labels are left to the caller.
// Requires: greatest > 0, wanted > 0.
[[nodiscard]] PlotAxis axis_from_zero(std::string label, double greatest, int wanted);

}  // namespace shoplore
