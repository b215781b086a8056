// Patterns as a person reads them.
#include "api/cli/print_patterns.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/api/sample_patterns.hpp"

namespace shoplore::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

std::string printed(ShowCases cases = ShowCases::kNo, std::size_t width = 120,
                    const PatternList& list = pattern_list()) {
  return print_patterns(PatternBook(), list, opened_patterns(), cases, pattern_words(),
                        {width, Colour::kOff});
}

TEST(PrintPatterns, ASentenceWithItsCountsOfEachKind) {
  EXPECT_THAT(
      printed(),
      AllOf(HasSubstr("engine family BW16D, P0299, whistle under load\n"),
            HasSubstr("charge-air hose, split <long> in 50 of 56 (81-95 %), otherwise in 5 of 130"),
            HasSubstr("48 vehicles; 3.0 times the usual share; odds ratio 208 ("),
            HasSubstr("found: tape on a hose in 10 of 10 ("),
            HasSubstr("earlier: replace turbocharger\n"),
            HasSubstr("the cause was on another part in 38 of 39 ("),
            HasSubstr("\"hose look\" had passed in 12 of 24 ("), HasSubstr("1 vehicle; q .002")));
}

TEST(PrintPatterns, AnOddsRatioWithAnEmptyCellIsOnlyItsLowerEnd) {
  EXPECT_THAT(printed(), AllOf(HasSubstr("odds ratio above "), Not(HasSubstr("odds ratio ~"))));
}

TEST(PrintPatterns, CasesAreNamedWhenAskedFor) {
  EXPECT_THAT(printed(), Not(HasSubstr("case-1")));
  EXPECT_THAT(printed(ShowCases::kYes), HasSubstr("case-1, case-2\n"));
}

TEST(PrintPatterns, WithinAScopeItStandsInTheHeadingOnly) {
  PatternList list = pattern_list();
  list.scope = {"engine_family", "bw16d"};
  list.scope_cases = 242;
  EXPECT_THAT(printed(ShowCases::kNo, 120, list),
              AllOf(HasSubstr("What recurs in 242 closed cases of engine family BW16D\n"),
                    HasSubstr("  1  P0299, whistle under load\n")));
}

TEST(PrintPatterns, NoLineIsWiderThanThePage) {
  for (const std::size_t width : {60U, 80U, 120U}) {
    const std::string text = printed(ShowCases::kYes, width);
    std::size_t start = 0;
    for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1) {
      EXPECT_LE(display_width(text.substr(start, end - start)), width);
    }
  }
}

TEST(PrintPatterns, NothingFoundIsSaid) {
  PatternList none;
  none.scope = {"engine_family", "xx99"};
  none.scope_cases = 7;
  const auto say = [&] {
    return print_patterns(PatternBook(), none, {}, ShowCases::kNo, pattern_words(),
                          {120, Colour::kOff});
  };
  EXPECT_THAT(say(), HasSubstr("from 20 cases on"));
  none.scope_cases = 40;
  EXPECT_THAT(say(), HasSubstr("Nothing that could be told from chance."));
}

TEST(PrintPatterns, TooFewSaysFromWhenItMakesSense) {
  EXPECT_THAT(print_too_few_for_patterns(PatternBook(), {120, Colour::kOff}),
              AllOf(HasSubstr("0 closed cases are too few"), HasSubstr("from about 100 on")));
}

}  // namespace
}  // namespace shoplore::testing
