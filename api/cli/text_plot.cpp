#include "api/cli/text_plot.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace shoplore {
namespace {

constexpr std::size_t kRows = 13, kMostColumns = 72;
constexpr std::string_view kSigns = "#ox+";
constexpr char kBandSign = '.';

class TextPlot {
 public:
  TextPlot(const Plot& plot, std::size_t width) : plot_(plot) {
    for (const std::string& label : plot.y.tick_labels) {
      margin_ = std::max(margin_, display_width(label));
    }
    columns_ = std::min(kMostColumns, width - margin_ - 2);
    grid_.assign(kRows, std::string(columns_, ' '));
  }

  std::string draw() {
    for (const PlotBand& each : plot_.bands) band(each);
    for (std::size_t i = plot_.series.size(); i > 0; --i) {
      series(plot_.series[i - 1], kSigns[(i - 1) % kSigns.size()]);
    }
    return rows() + foot() + legend();
  }

 private:
  static double share(const PlotAxis& axis, double value) {
    return std::clamp((value - axis.low) / (axis.high - axis.low), 0.0, 1.0);
  }
  std::size_t row_of(double y) const {
    return static_cast<std::size_t>(
        std::lround((1 - share(plot_.y, y)) * static_cast<double>(kRows - 1)));
  }
  std::size_t column_of(double x) const {
    return static_cast<std::size_t>(
        std::lround(share(plot_.x, x) * static_cast<double>(columns_ - 1)));
  }
  double x_at(std::size_t column) const {
    const double part = static_cast<double>(column) / static_cast<double>(columns_ - 1);
    return plot_.x.low + part * (plot_.x.high - plot_.x.low);
  }

  void band(const PlotBand& each) {
    for (std::size_t i = 0; i < each.steps.size(); ++i) {
      const double until = i + 1 < each.steps.size() ? each.steps[i + 1].x : each.end;
      for (std::size_t column = column_of(each.steps[i].x); column <= column_of(until); ++column) {
        for (std::size_t row = row_of(each.steps[i].high); row <= row_of(each.steps[i].low);
             ++row) {
          grid_[row][column] = kBandSign;
        }
      }
    }
  }

  // Nothing outside the points; between two of a step the earlier.
  static std::optional<double> value_at(const PlotSeries& drawn, double x) {
    const auto& points = drawn.points;
    if (points.empty() || x < points.front().x || x > points.back().x) return std::nullopt;
    auto after = std::upper_bound(points.begin(), points.end(), x,
                                  [](double at, const PlotPoint& point) { return at < point.x; });
    const PlotPoint& before = *(after - 1);
    if (after == points.end() || drawn.mark != PlotMark::kLine) return before.y;
    return before.y + (x - before.x) / (after->x - before.x) * (after->y - before.y);
  }

  void series(const PlotSeries& drawn, char sign) {
    for (std::size_t column = 0; column < columns_; ++column) {
      if (const auto y = value_at(drawn, x_at(column))) grid_[row_of(*y)][column] = sign;
    }
  }

  std::string rows() const {
    std::string out;
    for (std::size_t row = 0; row < kRows; ++row) {
      std::string label;
      for (std::size_t i = 0; i < plot_.y.ticks.size(); ++i) {
        if (row_of(plot_.y.ticks[i]) == row) label = plot_.y.tick_labels[i];
      }
      std::string line = pad_left(label, margin_) + " |" + grid_[row];
      line.erase(line.find_last_not_of(' ') + 1);
      out += line + "\n";
    }
    return out;
  }

  // Labels that would touch the one before are left out.
  std::string foot() const {
    std::string line(margin_ + 2 + columns_, ' ');
    std::size_t free_from = 0;
    for (std::size_t i = 0; i < plot_.x.ticks.size(); ++i) {
      const std::string& label = plot_.x.tick_labels[i];
      const std::size_t middle = margin_ + 2 + column_of(plot_.x.ticks[i]);
      std::size_t begin = middle - std::min(middle, label.size() / 2);
      begin = std::min(begin, line.size() - std::min(line.size(), label.size()));
      if (begin < free_from) continue;
      line.replace(begin, label.size(), label);
      free_from = begin + label.size() + 2;
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return std::string(margin_ + 1, ' ') + "+" + std::string(columns_, '-') + "\n" + line + "\n";
  }

  std::string legend() const {
    std::string text;
    const auto add = [&](char sign, const std::string& name) {
      text += (text.empty() ? "" : "; ") + std::string(1, sign) + " " + name;
    };
    for (std::size_t i = 0; i < plot_.series.size(); ++i) {
      add(kSigns[i % kSigns.size()], plot_.series[i].name);
    }
    for (const PlotBand& each : plot_.bands) add(kBandSign, each.name);
    return hang(std::string(margin_ + 2, ' '), "over " + plot_.x.label + ": " + text,
                margin_ + 2 + columns_);
  }

  const Plot& plot_;
  std::size_t margin_ = 0, columns_ = 0;
  std::vector<std::string> grid_;
};

}  // namespace

std::string text_of(const Plot& plot, std::size_t width) {
  return is_empty(plot) ? std::string() : TextPlot(plot, width).draw();
}

}  // namespace shoplore
