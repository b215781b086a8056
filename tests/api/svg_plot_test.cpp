#include "api/wire/svg_plot.hpp"

#include <gtest/gtest.h>

#include <regex>

namespace shoplore {
namespace {

Plot two_lines() {
  Plot plot;
  plot.title = "seals <& \"bushes\">";
  plot.x = axis_from_zero("thousand km", 28.1, 6);
  for (const double tick : plot.x.ticks) plot.x.tick_labels.push_back(std::to_string(int(tick)));
  plot.y = {"of all", 0, 1, {0, 1}, {"0 %", "100 %"}};
  plot.bands.push_back({"interval", {{5, .8, .95}, {10, .5, .8}}, 28.1});
  plot.series.push_back({"counted", PlotMark::kStep, {{0, 1}, {5, .9}, {10, .7}, {28.1, .7}}});
  plot.series.push_back({"fitted", PlotMark::kLine, {{0, 1}, {14, .7}, {40, -1}}});
  plot.note = "only what comes in";
  return plot;
}

// Opening and closing tags match, attributes are quoted, text holds no bare sign: a small reader of
// the XML this writer can make (XML 1.0, 5th ed., section 2.1).
std::string xml_fault(const std::string& xml) {
  static const std::regex tag(R"re(<(/?)([a-zA-Z]+)((?: [a-zA-Z0-9-]+="[^"<&]*")*)\s*(/?)>)re");
  static const std::regex text(R"re((?:[^<>&]|&(?:amp|lt|gt|quot);)*)re");
  std::vector<std::string> open;
  std::size_t at = xml.find("?>") + 2;
  while (at < xml.size()) {
    const std::size_t next = std::min(xml.find('<', at), xml.size());
    if (!std::regex_match(xml.substr(at, next - at), text)) return "text " + xml.substr(at, 40);
    if (next == xml.size()) break;
    std::smatch match;
    const std::string rest = xml.substr(next, xml.find('>', next) - next + 1);
    if (!std::regex_match(rest, match, tag)) return "tag " + rest;
    if (match[1].length() > 0) {
      if (open.empty() || open.back() != match[2]) return "closes " + rest;
      open.pop_back();
    } else if (match[4].length() == 0) {
      open.push_back(match[2]);
    }
    at = next + rest.size();
  }
  return open.empty() ? "" : "left open: " + open.back();
}

TEST(SvgPlot, IsWellFormedAndHoldsNothingThatRuns) {
  Plot empty;
  empty.title = "nothing";
  empty.note = "Too few failures & no curve.";
  for (const Plot& plot : {two_lines(), empty}) {
    const std::string svg = svg_of(plot);
    EXPECT_EQ(svg.rfind("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg ", 0), 0U);
    EXPECT_EQ(xml_fault(svg), "") << svg;
    for (const char* word : {"script", "href", "style", "@import", "onload", "foreignObject"}) {
      EXPECT_EQ(svg.find(word), std::string::npos) << word;
    }
  }
}

TEST(SvgPlot, TheReaderOfTheTestFindsFaults) {
  for (const char* bad : {"<?xml?><a>", "<?xml?><a></b>", "<?xml?><a b=c></a>", "<?xml?><a>&</a>",
                          "<?xml?><a b=\"<\"/>"}) {
    EXPECT_NE(xml_fault(bad), "") << bad;
  }
}

TEST(SvgPlot, NamesEverythingAndTellsSeriesApartWithoutColour) {
  const std::string svg = svg_of(two_lines());
  for (const char* said : {"seals &lt;&amp; &quot;bushes&quot;&gt;", "counted", "fitted",
                           "interval", "thousand km", "of all", "only what comes in", "100 %"}) {
    EXPECT_NE(svg.find(said), std::string::npos) << said;
  }
  EXPECT_NE(svg.find("stroke-dasharray"), std::string::npos);
  static const std::regex coloured("(fill|stroke)=\"(?!none|black|white|#888|#bbb|url)");
  EXPECT_FALSE(std::regex_search(svg, coloured)) << svg;
}

TEST(SvgPlot, StepsHoldUntilTheNextAndWhatLiesOutsideIsCutOff) {
  const std::string svg = svg_of(two_lines());
  // x 0..30 on 64..700, y 0..1 on 332..44.
  EXPECT_NE(svg.find("points=\"64.0,44.0 170.0,44.0 170.0,72.8 276.0,72.8 276.0,130.4 "
                     "659.7,130.4 659.7,130.4\""),
            std::string::npos)
      << svg;
  EXPECT_NE(svg.find("700.0,332.0\""), std::string::npos) << svg;
}

TEST(PlotAxis, EndsAtARoundNumberWithRoundSteps) {
  const struct {
    double greatest;
    int wanted;
    double high;
    std::size_t ticks;
  } rows[] = {{28.1, 6, 30, 7},   {30, 6, 30, 7}, {329, 6, 400, 5}, {1, 5, 1, 6},
              {.013, 6, .015, 4}, {5.2, 4, 6, 4}, {100, 4, 100, 3}};
  for (const auto& row : rows) {
    SCOPED_TRACE(row.greatest);
    const PlotAxis axis = axis_from_zero("km", row.greatest, row.wanted);
    EXPECT_DOUBLE_EQ(axis.high, row.high);
    EXPECT_EQ(axis.ticks.size(), row.ticks);
    EXPECT_EQ(axis.ticks.front(), 0);
    EXPECT_DOUBLE_EQ(axis.ticks.back(), row.high);
  }
}

}  // namespace
}  // namespace shoplore
