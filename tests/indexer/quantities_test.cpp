#include "indexer/quantities.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

TEST(Quantities, DaysThatExistAreReadAndWrittenTheSame) {
  for (const std::string text :
       {"1900-01-01", "1970-01-01", "2000-02-29", "2024-02-29", "2026-02-28", "2026-03-02",
        "2026-12-31", "2100-02-28", "2199-12-31"}) {
    const auto date = parse_date(text);
    ASSERT_TRUE(date) << text << ": " << describe(date.error());
    EXPECT_EQ(format_date(*date), text);
  }
}

TEST(Quantities, DaysAreCountedFrom1970) {
  EXPECT_EQ(parse_date("1970-01-01")->days.time_since_epoch().count(), 0);
  EXPECT_EQ(parse_date("1970-02-01")->days.time_since_epoch().count(), 31);
  EXPECT_EQ(parse_date("2000-03-01")->days.time_since_epoch().count(), 11017);  // date -d
}

TEST(Quantities, DaysThatDoNotExistAreRefused) {
  for (const char* text :
       {"2026-02-30", "2026-02-29", "2100-02-29", "1900-02-29", "2026-04-31", "2026-00-10",
        "2026-13-01", "2026-01-00", "2026-01-32", "1899-12-31", "2200-01-01", "0000-01-01"}) {
    const auto date = parse_date(text);
    ASSERT_FALSE(date) << text;
    EXPECT_EQ(date.error().code, ErrorCode::kInvalidInput);
    EXPECT_NE(date.error().message.find(text), std::string::npos);
  }
}

TEST(Quantities, OtherFormsOfDatesAreRefusedSayingWhichIsExpected) {
  for (const char* text : {"", "2026", "2026-2-3", "26-02-03", "2026/02/03", "03.02.2026",
                           "2026-02-03T00:00:00", " 2026-02-03", "2026-02-03 ", "2026-02-0x",
                           "+026-02-03", "-026-02-03", "2026-+2-03", "20260203", "yesterday"}) {
    const auto date = parse_date(text);
    ASSERT_FALSE(date) << text;
    EXPECT_EQ(date.error().code, ErrorCode::kInvalidInput);
    EXPECT_NE(date.error().message.find("YYYY-MM-DD"), std::string::npos) << text;
  }
}

TEST(Quantities, EveryDayThatIsTakenRoundTrips) {
  const auto last = parse_date("2199-12-31")->days;
  for (auto day = parse_date("1900-01-01")->days; day <= last; day += std::chrono::days{1}) {
    const auto again = parse_date(format_date(Date{day}));
    ASSERT_TRUE(again) << format_date(Date{day});
    ASSERT_EQ(again->days, day);
  }
}

TEST(Quantities, DatesAreInOrderOfTime) {
  EXPECT_LT(*parse_date("2026-02-28"), *parse_date("2026-03-01"));
  EXPECT_LT(*parse_date("2025-12-31"), *parse_date("2026-01-01"));
}

TEST(Quantities, MilesBecomeTheNearestKilometre) {
  EXPECT_EQ(kilometres_from_miles(0).value, 0);
  EXPECT_EQ(kilometres_from_miles(1).value, 2);
  EXPECT_EQ(kilometres_from_miles(88'000).value, 141'622);  // 141622.272
}

TEST(Quantities, TodayIsWithinTheYearsThatAreTaken) {
  EXPECT_TRUE(parse_date(format_date(today())));
}

}  // namespace
}  // namespace shoplore
