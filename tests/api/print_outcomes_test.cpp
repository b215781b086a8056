#include "api/cli/print_outcomes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

namespace shoplore {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

const Vocabulary& vocabulary() {
  static const Vocabulary built_in = Vocabulary::built_in().value();
  return built_in;
}

void expect_fits(const std::string& text, std::size_t width) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    EXPECT_LE(display_width(line), width) << line;
  }
}

StayedFixed twelve_cases() {
  StayedFixed group;
  group.fixes = {"replace wastegate_linkage"};
  group.cases = 12;
  group.came_back = 2;
  group.still_fixed = 7;
  group.not_heard_of = 3;
  group.seen_by_later_visits = 4;
  group.reasons = {{ComebackReason::kPart, 1}, {std::nullopt, 1}};
  group.by_days = {{std::chrono::days{90}, 0.8125, {0.5, 0.9375}, 2, 6}};
  group.by_km = {{Kilometres{10'000}, 1, {0.75, 1}, 0, 5}};
  return group;
}

TEST(PrintOutcomes, SharesStandWithTheirIntervalAndHowManyAreWatched) {
  for (const std::size_t width : {60U, 80U}) {
    const std::string text = print_stayed_fixed(twelve_cases(), vocabulary(), {width});
    expect_fits(text, width);
    EXPECT_THAT(text, HasSubstr("2 came back"));
    EXPECT_THAT(text, HasSubstr("after 90 days"));
    EXPECT_THAT(text, HasSubstr("81 %"));
    EXPECT_THAT(text, HasSubstr("50 to 94 %"));
    EXPECT_THAT(text, HasSubstr("after 10,000 km"));
  }
}

TEST(PrintOutcomes, TooFewAreSaidToBeTooFew) {
  StayedFixed group = twelve_cases();
  group.by_days.clear();
  group.by_km.clear();
  EXPECT_THAT(print_stayed_fixed(group, vocabulary(), {}), HasSubstr("too few watched"));
}

TEST(PrintOutcomes, WhatStandsHereAsAWrongCauseTellsOfNoCure) {
  StayedFixed group = twelve_cases();
  group.came_back = group.cases;
  group.reasons = {{ComebackReason::kWrongCause, group.cases}};
  const std::string text = print_stayed_fixed(group, vocabulary(), {});
  EXPECT_THAT(text, HasSubstr("12 wrong cause"));
  EXPECT_THAT(text, HasSubstr("Done for another cause"));
  EXPECT_THAT(text, Not(HasSubstr("90 % interval")));
}

TEST(PrintOutcomes, OffersBeyondTheShownAreCounted) {
  ComebackOffer offer;
  offer.ref = "case-7";
  offer.since = std::chrono::days{1};
  offer.cause = "wastegate_linkage:seized_open";
  offer.possible = {ComebackReason::kPart};
  const std::vector<ComebackOffer> offers(5, offer);
  for (const std::size_t width : {60U, 80U}) {
    const std::string text = print_comeback_offers(offers, "case-9", vocabulary(), {width});
    expect_fits(text, width);
    EXPECT_THAT(text, HasSubstr("case-7, 1 day before"));
    EXPECT_THAT(text, HasSubstr("and 2 earlier"));
  }
  EXPECT_EQ(print_comeback_offers({}, "case-9", vocabulary(), {}), "");
}

}  // namespace
}  // namespace shoplore
