#include "api/cli/print_lately.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

namespace shoplore {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Lately rising() {
  MonthlyCounts counts;
  counts.first = std::chrono::year(2022) / 1;
  std::vector<std::uint32_t> linkage(48, 3), rest(48, 100);
  linkage[30] = 0;
  for (std::size_t month = 45; month < 48; ++month) linkage[month] = 10;
  counts.causes = {{"wastegate_linkage:seized_open", "", linkage, 0}, {"rest:worn", "", rest, 0}};
  for (const std::uint32_t count : linkage) counts.cases.push_back(count + 100);
  return lately(counts);
}

std::string printed(const Lately& whole, const LatelyView& view, std::size_t width = 80) {
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  return print_lately(seen_by(view, whole).value(), view, vocabulary, {width, Colour::kOff});
}

TEST(PrintLately, ARiseIsTold) {
  const std::string text = printed(rising(), {});
  EXPECT_THAT(text, HasSubstr("Seen more lately"));
  EXPECT_THAT(text, HasSubstr("wastegate linkage, seized open"));
  EXPECT_THAT(text, HasSubstr("more often since about 2025-10"));
  EXPECT_THAT(text, HasSubstr("the same three months: 9 in 2024, 9 in 2023, 9 in 2022"));
  EXPECT_THAT(text, HasSubstr("▃▃▃▃▃▃·▃")) << "a month without a case is a dot";
  EXPECT_THAT(text, HasSubstr("███"));
}

TEST(PrintLately, NothingIsOneSentence) {
  const std::string text = printed(rising(), {{}, "", LatelyRows::kFallen});
  EXPECT_THAT(text, HasSubstr("Nothing is seen less often lately than before"));
  EXPECT_THAT(text, Not(HasSubstr("q:")));
  EXPECT_THAT(printed({}, {}), HasSubstr("nothing to compare"));
}

TEST(PrintLately, TooFewMonthsAreNamed) {
  MonthlyCounts counts;
  counts.first = std::chrono::year(2026) / 1;
  counts.causes = {{"pump:seized", "", std::vector<std::uint32_t>(5, 2), 0}};
  counts.cases = std::vector<std::uint32_t>(5, 2);
  EXPECT_THAT(printed(lately(counts), {}), HasSubstr("5 whole months are too few"));
}

TEST(PrintLately, NoLineIsWiderThanThePage) {
  for (const std::size_t width : {kMinWidth, kDefaultWidth, kMaxWidth}) {
    std::istringstream lines(printed(rising(), {{}, "", LatelyRows::kAll}, width));
    for (std::string line; std::getline(lines, line);)
      EXPECT_LE(display_width(line), width) << line;
  }
}

}  // namespace
}  // namespace shoplore
