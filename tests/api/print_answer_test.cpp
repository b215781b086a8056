#include "api/cli/print_answer.hpp"

#include <gtest/gtest.h>

#include <sstream>

#include "api/cli/print_understood.hpp"
#include "tests/api/sample_answer.hpp"

namespace shoplore {
namespace {

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = Vocabulary::built_in().value();
  return loaded;
}

std::string printed(const Answer& answer, std::size_t width, Colour colour = Colour::kOff) {
  return print_answer(answer, vocabulary(), {width, colour});
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::size_t find_or_fail(const std::string& text, const std::string& part) {
  const auto at = text.find(part);
  EXPECT_NE(at, std::string::npos) << part << "\nnot in\n" << text;
  return at;
}

// An answer with everything as long as it may get.
Answer wide_answer() {
  Answer answer = testing::sample_answer();
  for (LikelyCause& cause : answer.likely_causes) {
    cause.share.count = 123'456;
    cause.share.out_of = 1'000'000;
    cause.component = "a_component_with_a_name_that_goes_on_and_on_beyond_any_column";
    cause.fixes_together = {{{"replace " + cause.component, "clean " + cause.component},
                             1'000'000,
                             900'000,
                             90'000,
                             10'000,
                             testing::share(1, 2, 0, 1)}};
    cause.why = {
        {{"symptom:" + cause.component, "present"}, 7, 1'000'000, 1'000'000, 1'000'000, 1'000'000}};
  }
  answer.understood.not_understood.assign(40, "gibberishgibberish");
  answer.similar[0].snippet = {std::string(300, 'x'), {{10, 20}}};
  answer.watch_out[0].text = std::string(200, 'y') + " é é é é é é é é é é é é é é é é é é é é é é";
  return answer;
}

TEST(PrintAnswer, AWordNotUnderstoodStandsWithWhatMayHaveBeenMeant) {
  const auto built_in = Vocabulary::built_in();
  ASSERT_TRUE(built_in);
  Understood understood = testing::understood();
  understood.not_understood = {"foo", "bar"};
  const std::string text = print_understood(understood, *built_in, {});
  EXPECT_NE(text.find("Not understood  \"foo\" (did you mean: test for fools?), \"bar\"\n"),
            std::string::npos)
      << text;
}

TEST(PrintAnswer, NoLineIsWiderThanThePage) {
  for (const std::size_t width : {kMinWidth, kDefaultWidth, kMaxWidth}) {
    for (const Colour colour : {Colour::kOff, Colour::kOn}) {
      for (const Answer& answer :
           {testing::sample_answer(), testing::answer_without_match(), wide_answer()}) {
        for (const std::string& line : lines_of(printed(answer, width, colour))) {
          EXPECT_LE(display_width(line), width) << line;
        }
      }
    }
  }
}

TEST(PrintAnswer, WithoutColourThereIsNoEscape) {
  EXPECT_EQ(printed(testing::sample_answer(), 80).find('\x1b'), std::string::npos);
}

TEST(PrintAnswer, ColourOnlyAdds) {
  std::string coloured = printed(testing::answer_without_match(), 80, Colour::kOn);
  for (auto at = coloured.find("\x1b["); at != std::string::npos; at = coloured.find("\x1b[")) {
    coloured.erase(at, coloured.find('m', at) - at + 1);
  }
  EXPECT_EQ(coloured, printed(testing::answer_without_match(), 80));
}

TEST(PrintAnswer, ShowsAllPartsInOrder) {
  const std::string text = printed(testing::sample_answer(), 80);
  std::size_t before = 0;
  for (const char* part : {"Understood", "Not understood", "Likely causes", "14 of 19",
                           "something not in these records", "How wide we looked", "Watch out",
                           "Similar cases", "Cautions", "Counts are evidence"}) {
    const auto at = find_or_fail(text, part);
    EXPECT_GE(at, before) << part;
    before = at;
  }
}

TEST(PrintAnswer, EveryPercentageStandsBesideItsCounts) {
  for (const std::string& line : lines_of(printed(testing::sample_answer(), 80))) {
    if (line.find('%') == std::string::npos || line.find("bar:") != std::string::npos) continue;
    EXPECT_NE(line.find(" of "), std::string::npos) << line;
  }
}

TEST(PrintAnswer, NumbersLineUp) {
  std::vector<std::string> rows;
  for (const std::string& line : lines_of(printed(testing::sample_answer(), 80))) {
    if (line.find("  p ") != std::string::npos) rows.push_back(line);
  }
  ASSERT_EQ(rows.size(), 4u);  // two causes, the further ones, and the one not in the records
  for (const std::string& row : rows) EXPECT_EQ(display_width(row), 80u) << row;
  EXPECT_EQ(display_width(rows[0].substr(0, rows[0].find(" of "))),
            display_width(rows[1].substr(0, rows[1].find(" of "))));
}

// Beside the causes that the other findings rank, and saying where nobody has seen it.
TEST(PrintAnswer, NamesWhatNoCaseHolds) {
  Answer answer = testing::sample_answer();
  answer.never_seen = {{"symptom:misfire", "present"}, {"code:P0420", "present"}};
  EXPECT_LT(find_or_fail(printed(answer, 80), "Never seen here: misfire · P0420."),
            find_or_fail(printed(answer, 80), "1  "));
  answer.filter.make = "Brackwater";
  find_or_fail(printed(answer, 80), "Never seen within the filter: misfire · P0420.");
}

TEST(PrintAnswer, SaysPlainlyThatNothingMatches) {
  const std::string text = printed(testing::answer_without_match(), 80);
  find_or_fail(text, "No case like this one in 2,400. Nothing is ranked.");
  find_or_fail(text, "Never seen here: whistle under load.");
  EXPECT_EQ(text.find("something not in these records"), std::string::npos);
  EXPECT_LT(find_or_fail(text, "high voltage"), find_or_fail(text, "How wide we looked"));
}

struct BarRow {
  const char* name;
  Share share;
  const char* bar;
};

// By hand: column = floor(10 x), the last column also for x = 1.
const BarRow kBars[] = {
    {"inside", testing::share(7, 10, 0.45, 0.85), "|----===o=-|"},
    {"none", testing::share(0, 10, 0, 0.17), "|o=--------|"},
    {"all", testing::share(10, 10, 0.83, 1), "|--------=o|"},
    {"nothing known", testing::share(0, 0, 0, 1), "|==========|"},
};

TEST(PrintAnswer, DrawsTheInterval) {
  for (const BarRow& row : kBars) EXPECT_EQ(interval_bar(row.share, 10), row.bar) << row.name;
}

// The whole page, so that a change of look is a decision. Numbers by hand: exp(1.75) = 5.75,
// exp(0.5) = 1.65; the bar's columns are floor(16 x .5), floor(16 x .875) and floor(16 x 14/19).
TEST(PrintAnswer, LooksLikeThis) {
  Answer answer = testing::sample_answer();
  answer.likely_causes.resize(1);
  answer.causes_left_out = 0;
  EXPECT_EQ(printed(answer, 80),
            R"text(Understood  2016 Brackwater · 142,000 km · P0299 (boost lower than asked for)
            whistle under load (absent)
            (142k taken as kilometres)
Not understood  "foo" (did you mean: test for fools?)

Likely causes
  counted in 19 cases (17 vehicles): make brackwater, P0299
  1  wastegate linkage, seized open  14 of 19   74 %  |--------===o===-|  p  .81
     (13 vehicles)
     what was done in 9 cases of it            cases  stayed fixed  not recorded
     replace wastegate linkage                     9        7 of 8             1
     why                                        with this cause  all other cases
     P0299                                ×5.8         17 of 19      60 of 1,200
     whistle under load (absent)          ÷1.6           2 of 4          9 of 12
  –  something not in these records                                       p  .02
  bar: 90 % interval of the share; p: the model's probability; × and ÷: what a
  finding does to the odds of the cause

How wide we looked
  1. engine family bw16d, P0299: 3 cases, 3 vehicles
  2. make brackwater, the same without "whistle under load (absent)": 19 cases,
     17 vehicles

Next check
  !  Stop checking and repair: expected 4 h 59 min at once, 5 h 15 min with the
     best check first. In this order: wastegate linkage, seized open (p .97, 4 h
     1 min). Parts are counted as working time.
  ?  ask: whistle under load?
     present (p .12): charge-air hose, split .75
  1. move the wastegate linkage by hand, 5 min + 10 min for the heat shield
     fail (p .75): wastegate linkage, seized open .97
     pass (p .25): charge-air hose, split .50
     a pass misled us 3 of 50 times (90 %: 2 to 13 %)
     where: arm at the turbine housing
     Engine off and cold.

Watch out
  ! Of 6 that came in with another turbocharger, 5 were the linkage.
    cases case-7, case-3 and 3 more

Similar cases
  case-7 · 2024-03-02 · 2016 Brackwater Tidal BW16D, 142,000 km
    wastegate linkage, seized open; replace wastegate linkage; stayed fixed
    "*flat* uphill, no *whistle*"

Cautions
  ! hot exhaust: Work cold. (wastegate linkage)

Counts are evidence, not a diagnosis. Follow the vehicle maker's procedure and
local rules. Records as of revision 2412, 2,400 counted cases.
)text");
}

}  // namespace
}  // namespace shoplore
