#include "api/cli/text_plot.hpp"

#include <gtest/gtest.h>

#include <sstream>

namespace shoplore {
namespace {

Plot half_way_down() {
  Plot plot;
  plot.x = {"thousand km", 0, 50, {0, 25, 50}, {"0", "25", "50"}};
  plot.y = {"of all", 0, 1, {0, .5, 1}, {"0 %", "50 %", "100 %"}};
  plot.bands.push_back({"interval", {{25, .25, .75}}, 50});
  plot.series.push_back({"counted", PlotMark::kStep, {{0, 1}, {25, .5}, {50, .5}}});
  plot.series.push_back({"fitted", PlotMark::kLine, {{0, 1}, {50, 0}}});
  return plot;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

TEST(TextPlot, StepsLinesAndBandsStandWhereTheyBelong) {
  const auto lines = lines_of(text_of(half_way_down(), 60));
  ASSERT_GE(lines.size(), 16U);
  // Margin of "100 %", a space, the axis: the grid begins at column 7 and is 53 wide.
  EXPECT_EQ(lines[0], "100 % |" + std::string(26, '#'));
  EXPECT_EQ(lines[6].substr(0, 7), " 50 % |");
  EXPECT_EQ(lines[6].substr(7 + 26), std::string(27, '#'));
  EXPECT_EQ(lines[3][7 + 30], '.');
  EXPECT_EQ(lines[9][7 + 30], '.');
  EXPECT_EQ(lines[2].find('.'), std::string::npos);
  EXPECT_EQ(lines[12].substr(0, 7), "  0 % |");
  EXPECT_EQ(lines[12].back(), 'o');
  EXPECT_EQ(lines[13], "      +" + std::string(53, '-'));
  EXPECT_NE(lines[14].find("25"), std::string::npos);
}

TEST(TextPlot, NoLineIsWiderThanThePage) {
  for (const std::size_t width : {60U, 80U, 120U}) {
    for (const std::string& line : lines_of(text_of(half_way_down(), width))) {
      EXPECT_LE(display_width(line), width) << line;
    }
  }
}

TEST(TextPlot, AnEmptyPlotIsNothing) {
  EXPECT_EQ(text_of(Plot{}, 80), "");
}

}  // namespace
}  // namespace shoplore
