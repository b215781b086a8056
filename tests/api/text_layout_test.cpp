#include "api/cli/text_layout.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::ElementsAre;

struct WidthRow {
  const char* text;
  std::size_t width;
};

// Widths by Unicode Standard Annex 11: wide ideographs 2, combining marks 0.
const WidthRow kWidths[] = {
    {"", 0},
    {"linkage", 7},
    {"é", 1},
    {"e\u0301", 1},
    {"142 km · ÷3", 11},
    {"\u6f22\u5b57", 4},
    {"\x1b[1mbold\x1b[0m", 4},
    {"–", 1},
    {"\xff", 1},
};

TEST(TextLayout, CountsColumnsNotBytes) {
  for (const WidthRow& row : kWidths) EXPECT_EQ(display_width(row.text), row.width) << row.text;
}

TEST(TextLayout, BreaksBetweenWords) {
  EXPECT_THAT(wrap("flat uphill, no whistle", 12), ElementsAre("flat uphill,", "no whistle"));
}

TEST(TextLayout, CutsAWordThatFitsNoLine) {
  EXPECT_THAT(wrap("a verylongword", 5), ElementsAre("a", "veryl", "ongwo", "rd"));
}

TEST(TextLayout, NeverCutsInsideACharacter) {
  EXPECT_THAT(wrap("ééééé", 2), ElementsAre("éé", "éé", "é"));
}

TEST(TextLayout, KeepsLineEndsAndNothingElse) {
  EXPECT_THAT(wrap("a\nb   c\t d", 20), ElementsAre("a", "b c d"));
}

TEST(TextLayout, EmptyTextIsOneLine) {
  EXPECT_THAT(wrap("", 10), ElementsAre(""));
}

TEST(TextLayout, HangsUnderItsFirstLine) {
  EXPECT_EQ(hang("  1. ", "one two three four", 16), "  1. one two\n     three four\n");
}

TEST(TextLayout, PadsByColumns) {
  EXPECT_EQ(pad_right("é", 3), "é  ");
  EXPECT_EQ(pad_left("é", 3), "  é");
  EXPECT_EQ(pad_left("long", 3), "long");
}

TEST(TextLayout, TablesAlignTheirCells) {
  EXPECT_EQ(table({{"what", {"n", "of"}}, {"é two", {"12", "1 of 3"}}}, 2, 30),
            "  what               n      of\n"
            "  é two             12  1 of 3\n");
}

TEST(TextLayout, TablesWrapTheirText) {
  EXPECT_EQ(table({{"one two three four", {"1"}}}, 0, 17), "one two three   1\nfour\n");
}

TEST(TextLayout, TablesWithoutRoomPutCellsBelow) {
  EXPECT_EQ(table({{"a name", {"1,000", "2,000"}}}, 1, 16), " a name\n    1,000  2,000\n");
}

TEST(TextLayout, InkIsInvisibleWhenOff) {
  EXPECT_EQ(Ink(Colour::kOff).bold("x"), "x");
  EXPECT_EQ(Ink(Colour::kOn).bold("x"), "\x1b[1mx\x1b[0m");
}

TEST(TextLayout, DurationsAreInHoursAndMinutes) {
  const std::pair<double, const char*> table[] = {{0, "0 min"},     {8.4, "8 min"},
                                                  {59.4, "59 min"}, {59.6, "1 h"},
                                                  {120, "2 h"},     {130, "2 h 10 min"}};
  for (const auto& [minutes, text] : table) EXPECT_EQ(duration_text(minutes), text);
}

}  // namespace
}  // namespace shoplore
