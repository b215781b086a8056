#include "api/wire/svg_plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "api/wire/markup_text.hpp"

namespace shoplore {
namespace {

constexpr double kWidth = 720, kHeight = 440;
constexpr double kLeft = 64, kRight = 20, kTop = 44, kBottom = 108;
constexpr double kLegendSide = 26, kLegendStep = 200;
// By series: what tells them apart without colour.
constexpr std::array kDashes{"", "7 4", "2 3", "10 3 2 3"};

std::string text_at(double x, double y, const std::string& anchor, const std::string& text,
                    int size = 12) {
  return fmt::format(
      "<text x=\"{:.1f}\" y=\"{:.1f}\" font-size=\"{}\" text-anchor=\"{}\">{}</text>\n", x, y, size,
      anchor, markup_text(text));
}

std::string line_from(PlotPoint from, PlotPoint to, const std::string& more) {
  return fmt::format("<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" {}/>\n", from.x,
                     from.y, to.x, to.y, more);
}

std::string points_text(const std::vector<PlotPoint>& points) {
  std::string text;
  for (const PlotPoint& point : points) {
    text += fmt::format("{}{:.1f},{:.1f}", text.empty() ? "" : " ", point.x, point.y);
  }
  return text;
}

class SvgPlot {
 public:
  explicit SvgPlot(const Plot& plot) : plot_(plot) {}

  // The elements, without the document around them.
  std::string draw() {
    out_ = text_at(kLeft, 24, "start", plot_.title, 15);
    if (is_empty(plot_)) {
      out_ += text_at(kWidth / 2, kHeight / 2, "middle", plot_.note, 13);
    } else {
      for (const PlotBand& each : plot_.bands) band(each);
      axes();
      for (std::size_t i = 0; i < plot_.series.size(); ++i) series(i);
      legend();
      out_ += text_at(kLeft, kHeight - 12, "start", plot_.note, 11);
    }
    return std::move(out_);
  }

  // What it shows, in words.
  std::string description() const {
    if (is_empty(plot_)) return plot_.note;
    std::string names;
    for (const PlotSeries& each : plot_.series) names += (names.empty() ? "" : "; ") + each.name;
    for (const PlotBand& each : plot_.bands) names += (names.empty() ? "" : "; ") + each.name;
    return plot_.y.label + " over " + plot_.x.label + ": " + names;
  }

 private:
  PlotPoint placed(double x, double y) const {
    const auto share = [](const PlotAxis& axis, double value) {
      return std::clamp((value - axis.low) / (axis.high - axis.low), 0.0, 1.0);
    };
    return {kLeft + share(plot_.x, x) * (kWidth - kLeft - kRight),
            kHeight - kBottom - share(plot_.y, y) * (kHeight - kTop - kBottom)};
  }

  void band(const PlotBand& each) {
    std::vector<PlotPoint> upper, lower;
    for (std::size_t i = 0; i < each.steps.size(); ++i) {
      const PlotBandStep& step = each.steps[i];
      const double until = i + 1 < each.steps.size() ? each.steps[i + 1].x : each.end;
      for (const double x : {step.x, until}) {
        upper.push_back(placed(x, step.high));
        lower.push_back(placed(x, step.low));
      }
    }
    upper.insert(upper.end(), lower.rbegin(), lower.rend());
    out_ += fmt::format("<polygon points=\"{}\" fill=\"url(#hatch)\" stroke=\"none\"/>\n",
                        points_text(upper));
  }

  void axes() {
    const std::string thin = "stroke=\"#bbb\" stroke-width=\"0.5\"";
    const std::string firm = "stroke=\"black\" stroke-width=\"1\"";
    for (std::size_t i = 0; i < plot_.x.ticks.size(); ++i) {
      const PlotPoint foot = placed(plot_.x.ticks[i], plot_.y.low);
      out_ += line_from(foot, {foot.x, foot.y + 5}, firm);
      out_ += text_at(foot.x, foot.y + 18, "middle", plot_.x.tick_labels[i]);
    }
    for (std::size_t i = 0; i < plot_.y.ticks.size(); ++i) {
      const PlotPoint left = placed(plot_.x.low, plot_.y.ticks[i]);
      out_ += line_from(left, placed(plot_.x.high, plot_.y.ticks[i]), thin);
      out_ += text_at(left.x - 6, left.y + 4, "end", plot_.y.tick_labels[i]);
    }
    const PlotPoint corner = placed(plot_.x.low, plot_.y.low);
    out_ += line_from(corner, placed(plot_.x.high, plot_.y.low), firm);
    out_ += line_from(corner, placed(plot_.x.low, plot_.y.high), firm);
    out_ += text_at(kWidth - kRight, corner.y + 36, "end", plot_.x.label);
    out_ += text_at(kLeft, kTop - 6, "start", plot_.y.label, 11);
  }

  static std::string stroke(std::size_t number) {
    const std::string dash = kDashes[number % kDashes.size()];
    return "fill=\"none\" stroke=\"black\" stroke-width=\"1.8\"" +
           (dash.empty() ? std::string() : " stroke-dasharray=\"" + dash + "\"");
  }

  void series(std::size_t number) {
    const PlotSeries& drawn = plot_.series[number];
    if (drawn.mark == PlotMark::kBar) return bars(drawn);
    std::vector<PlotPoint> points;
    for (const PlotPoint& point : drawn.points) {
      const PlotPoint at = placed(point.x, point.y);
      if (drawn.mark == PlotMark::kStep && !points.empty())
        points.push_back({at.x, points.back().y});
      points.push_back(at);
    }
    out_ += fmt::format("<polyline points=\"{}\" {}/>\n", points_text(points), stroke(number));
  }

  static std::string box(PlotPoint corner, double width, double height) {
    return fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"#ddd\" "
        "stroke=\"black\" stroke-width=\"0.8\"/>\n",
        corner.x, corner.y, width, height);
  }

  void bars(const PlotSeries& drawn) {
    for (std::size_t i = 0; i + 1 < drawn.points.size(); ++i) {
      const PlotPoint top = placed(drawn.points[i].x, drawn.points[i].y);
      const PlotPoint foot = placed(drawn.points[i + 1].x, plot_.y.low);
      if (foot.y > top.y) out_ += box(top, foot.x - top.x, foot.y - top.y);
    }
  }

  void legend() {
    double x = kLeft;
    const double y = kHeight - 40;
    for (std::size_t i = 0; i < plot_.series.size(); ++i, x += kLegendStep) {
      out_ += plot_.series[i].mark == PlotMark::kBar
                  ? box({x, y - 5}, kLegendSide, 10)
                  : line_from({x, y}, {x + kLegendSide, y}, stroke(i));
      out_ += text_at(x + kLegendSide + 6, y + 4, "start", plot_.series[i].name);
    }
    for (const PlotBand& each : plot_.bands) {
      out_ += fmt::format(
          "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"10\" fill=\"url(#hatch)\"/>\n",
          x, y - 5, kLegendSide);
      out_ += text_at(x + kLegendSide + 6, y + 4, "start", each.name);
      x += kLegendStep;
    }
  }

  const Plot& plot_;
  std::string out_;
};

}  // namespace

std::string svg_of(std::span<const Plot> plots) {
  std::string titles, descriptions, drawn;
  for (std::size_t i = 0; i < plots.size(); ++i) {
    SvgPlot plot(plots[i]);
    titles += (i == 0 ? "" : "; ") + plots[i].title;
    descriptions += (i == 0 ? "" : "; ") + plot.description();
    drawn += fmt::format("<g transform=\"translate(0 {})\">\n{}</g>\n",
                         kHeight * static_cast<double>(i), plot.draw());
  }
  return fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}\" height=\"{1}\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"sans-serif\" role=\"img\">\n"
      "<title>{2}</title>\n<desc>{3}</desc>\n"
      "<defs><pattern id=\"hatch\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
      "patternTransform=\"rotate(45)\"><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"6\" "
      "stroke=\"#888\" stroke-width=\"1\"/></pattern></defs>\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"white\"/>\n{4}</svg>\n",
      kWidth, kHeight * static_cast<double>(plots.size()), markup_text(titles),
      markup_text(descriptions), drawn);
}

std::string svg_of(const Plot& plot) {
  return svg_of(std::span(&plot, 1));
}

}  // namespace shoplore
