// Trust in checks as a person reads it.
#include "api/cli/print_check_trust.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace shoplore {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"conditions.json",
            R"({"kind":"condition","entries":[{"id":"cold","name":"when cold"}]})"},
           {"checks.json", R"({"kind":"check","entries":[{"id":"look","name":"hose look"},)"
                           R"({"id":"round","name":"look round"}]})"}})
          .value();
  return vocabulary;
}

CheckTrust sample() {
  CheckTrust trust;
  trust.check = "look";
  trust.done = 42;
  trust.pass = {24, 20, 0, 3, 1, {3, 23, {0.05, 0.28}}};
  trust.fail = {15, 13, 0, 2, 0, {2, 15, {0.04, 0.32}}};
  trust.tells_about_components = true;
  trust.table = {13, 2, 4, 20};
  return trust;
}

std::string printed(const std::vector<CheckTrust>& checks,
                    const std::vector<ConditionTrust>& conditions = {}, std::size_t width = 80) {
  return print_check_trust(checks, conditions, words(), {width, Colour::kOff});
}

TEST(PrintCheckTrust, CountsStandWithTheirIntervals) {
  EXPECT_THAT(printed({sample()}),
              AllOf(HasSubstr("hose look"), HasSubstr("  42"), HasSubstr("3 of 23 (5-28 %)"),
                    HasSubstr("2 of 15 (4-32 %)"), HasSubstr("76 % ("), HasSubstr("91 % ("),
                    HasSubstr("8.4 ("), HasSubstr("0.26 (")));
}

TEST(PrintCheckTrust, NoLineIsWiderThanThePage) {
  ConditionTrust cold{"look", "cold", sample().pass, sample().fail, 0};
  for (const std::size_t width : {60U, 80U, 120U}) {
    const std::string text = printed({sample()}, {cold}, width);
    std::size_t start = 0;
    for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1) {
      EXPECT_LE(display_width(text.substr(start, end - start)), width);
    }
  }
}

TEST(PrintCheckTrust, WhatNobodySpokeOfIsSaidToBeUnknown) {
  EXPECT_THAT(printed({sample()}, {}, 120), HasSubstr("1 verdict is neither borne out"));
  CheckTrust known = sample();
  known.pass.unknown = 0;
  EXPECT_THAT(printed({known}, {}, 120), Not(HasSubstr("unknown")));
}

TEST(PrintCheckTrust, ACheckThatTellsAboutNothingHasNoRowAgainstTheCause) {
  CheckTrust trust = sample();
  trust.tells_about_components = false;
  EXPECT_THAT(printed({trust}), Not(HasSubstr("sensitivity")));
}

TEST(PrintCheckTrust, ARatioThatRestsOnAddedHalvesIsMarked) {
  CheckTrust trust = sample();
  trust.table = {13, 0, 4, 20};
  EXPECT_THAT(printed({trust}), HasSubstr("~"));
}

TEST(PrintCheckTrust, ChecksSeldomDoneAreOnlyCounted) {
  CheckTrust seldom;
  seldom.check = "round";
  seldom.done = kEnoughToTrust - 1;
  EXPECT_THAT(printed({sample(), seldom}),
              AllOf(HasSubstr("1 more done fewer than 5 times"), Not(HasSubstr("look round"))));
  seldom.done = kEnoughToTrust;
  EXPECT_THAT(printed({sample(), seldom}), HasSubstr("look round"));
  EXPECT_THAT(printed({}), HasSubstr("nothing to tell"));
}

TEST(PrintCheckTrust, OnlyConditionsWrittenDownOftenEnoughAreShown) {
  ConditionTrust cold{"look", "cold", {}, {}, kEnoughToTrust};
  EXPECT_THAT(printed({sample()}, {cold}), HasSubstr("hose look: when cold"));
  cold.unclear = kEnoughToTrust - 1;
  ConditionTrust none{"look", "", {}, {}, 30};
  EXPECT_THAT(printed({sample()}, {cold, none}), Not(HasSubstr("By condition")));
}

}  // namespace
}  // namespace shoplore
