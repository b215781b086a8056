// Warnings as text: which are shown, the cases behind them, and what stands where there are none.
#include "api/cli/print_watch_out.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/api/sample_answer.hpp"

namespace shoplore {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Warning warning(std::uint32_t count, const std::vector<std::string>& refs) {
  Warning one;
  one.text = "Beware.";
  one.share = {count, 20, {0.1, 0.4}};
  one.refs = refs;
  return one;
}

TEST(PrintWatchOut, ThreeCasesAreNamedAndTheRestCounted) {
  const struct {
    const char* name;
    std::uint32_t count;
    std::vector<std::string> refs;
    std::string text;
  } table[] = {{"none", 0, {}, "  ! Beware.\n"},
               {"one", 1, {"a"}, "  ! Beware.\n    case a\n"},
               {"three", 3, {"a", "b", "c"}, "  ! Beware.\n    cases a, b, c\n"},
               {"more than named",
                1'204,
                {"a", "b", "c", "d"},
                "  ! Beware.\n    cases a, b, c and 1,201 more\n"},
               {"a story without a count",
                0,
                {"a", "b", "c", "d"},
                "  ! Beware.\n    cases a, b, c and 1 more\n"}};
  for (const auto& each : table) {
    EXPECT_EQ(print_warnings({warning(each.count, each.refs)}, 5, {}), each.text) << each.name;
  }
}

TEST(PrintWatchOut, OfManyTheFirstAreShownAndTheWayToTheOthers) {
  const std::vector<Warning> three(3, warning(0, {}));
  EXPECT_EQ(print_warnings(three, 2, {}),
            "  ! Beware.\n  ! Beware.\n  + 1 more: ask --watch-out shows all\n");
  EXPECT_THAT(print_warnings(three, 3, {}), Not(HasSubstr("more")));
}

TEST(PrintWatchOut, AloneItShowsAllAndTheNote) {
  Answer answer = testing::sample_answer();
  answer.watch_out.assign(9, warning(0, {}));
  const std::string text = print_watch_out(answer, {});
  EXPECT_THAT(text, Not(HasSubstr("shows all")));
  EXPECT_THAT(text, HasSubstr("Counts are evidence, not a diagnosis."));
  EXPECT_THAT(text, Not(HasSubstr("Likely causes")));
}

TEST(PrintWatchOut, WithoutAnyItSaysWhy) {
  Answer quiet = testing::sample_answer();
  quiet.watch_out.clear();
  EXPECT_THAT(print_watch_out(quiet, {}), HasSubstr("Nothing stands out in 2,400 cases."));
  EXPECT_THAT(print_watch_out(testing::answer_without_match(), {}),
              HasSubstr("No case like this one in 2,400"));
  quiet.understood.evidence.clear();
  EXPECT_THAT(print_watch_out(quiet, {}), HasSubstr("Nothing of this was understood"));
}

TEST(PrintWatchOut, NoLineIsWiderThanThePage) {
  Answer answer = testing::sample_answer();
  answer.watch_out.assign(6, warning(1'000'000, {"a-very-long-ref-of-some-other-program-0001",
                                                 "a-very-long-ref-of-some-other-program-0002"}));
  for (const std::size_t width : {60U, 80U}) {
    std::stringstream lines(print_watch_out(answer, {width, Colour::kOff}));
    for (std::string line; std::getline(lines, line);) {
      EXPECT_LE(display_width(line), width) << line;
    }
  }
}

}  // namespace
}  // namespace shoplore
