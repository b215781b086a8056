// What the thesis leaves open; its own figures are in tests/outside/.
#include "query/practice/spaced_repetition.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

const Date kStart = *parse_date("2026-01-05");

Date after(Date day, int days) {
  return {day.days + std::chrono::days(days)};
}

TEST(SpacedRepetition, KnownOnTheSameDayEndsTheDaysWorkAndMovesNothing) {
  const Repetition weak = repeated({}, 3, kStart);
  EXPECT_EQ(weak.due, kStart);
  const Repetition known = repeated(weak, 5, kStart);
  EXPECT_EQ(known.easiness, weak.easiness);
  EXPECT_EQ(known.in_a_row, weak.in_a_row);
  EXPECT_EQ(known.due, after(kStart, weak.interval_days));
  EXPECT_EQ(repeated(weak, 0, kStart), weak);
}

TEST(SpacedRepetition, RememberedBeforeItsDayChangesNothing) {
  const Repetition first = repeated({}, 4, kStart);
  const Repetition second = repeated(first, 4, after(kStart, 1));
  EXPECT_EQ(repeated(second, 5, after(kStart, 3)), second);
}

TEST(SpacedRepetition, ForgottenBeforeItsDayStartsAnew) {
  const Repetition second = repeated(repeated({}, 4, kStart), 4, after(kStart, 1));
  const Repetition forgotten = repeated(second, 1, after(kStart, 3));
  EXPECT_EQ(forgotten.in_a_row, 0);
  EXPECT_EQ(forgotten.interval_days, 1);
  EXPECT_EQ(forgotten.easiness, second.easiness);
  EXPECT_EQ(forgotten.due, after(kStart, 3));
}

TEST(SpacedRepetition, OverdueCountsAsOnItsDay) {
  const Repetition second = repeated(repeated({}, 4, kStart), 4, after(kStart, 1));
  const Repetition third = repeated(second, 4, after(kStart, 90));
  EXPECT_EQ(third.interval_days, 15);
  EXPECT_EQ(third.due, after(kStart, 105));
}

}  // namespace
}  // namespace shoplore
