// SM-2 against the thesis that describes it.
#include <gtest/gtest.h>

#include <vector>

#include "query/practice/spaced_repetition.hpp"

namespace shoplore {
namespace {

const Date kStart = *parse_date("2026-01-05");

struct Row {
  int grade, interval, easiness;
};

// Each repetition on the day it is planned for.
void expect_run(const std::vector<Row>& rows) {
  Repetition repetition;
  Date day = kStart;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    repetition = repeated(repetition, rows[i].grade, day);
    EXPECT_EQ(repetition.interval_days, rows[i].interval) << "repetition " << i + 1;
    EXPECT_EQ(repetition.easiness, rows[i].easiness) << "repetition " << i + 1;
    day = {day.days + std::chrono::days(repetition.interval_days)};
  }
}

// Wozniak 1990, section 3.2: EF' = EF + (0.1 - (5 - q)(0.08 + (5 - q) 0.02)). q below 3 leaves EF.
TEST(SpacedRepetitionOutside, EasinessChangesAsTheThesisSays) {
  const std::vector<std::pair<int, int>> changes{{5, 10}, {4, 0}, {3, -14}, {2, 0}, {1, 0}, {0, 0}};
  for (const auto& [grade, change] : changes) {
    EXPECT_EQ(repeated({}, grade, kStart).easiness, 250 + change) << grade;
  }
}

// Same section: I(1) = 1, I(2) = 6, I(n) = I(n-1) EF; EF no less than 1.3.
TEST(SpacedRepetitionOutside, IntervalsBeginWithOneAndSixDays) {
  Repetition repetition = repeated({}, 4, kStart);
  EXPECT_EQ(repetition.interval_days, 1);
  repetition = repeated(repetition, 4, repetition.due);
  EXPECT_EQ(repetition.interval_days, 6);
  for (int i = 0; i < 20; ++i)
    repetition = repeated(repetition, 3,
                          {repetition.last.days + std::chrono::days(repetition.interval_days)});
  EXPECT_EQ(repetition.easiness, 130);
}

// With EF as a binary fraction the fifth 5 gives 151: 50 x 3.0000000000000004 rounded up.
// Runs worked out by hand from the formulas; EF' of the same repetition, fractions rounded up.
TEST(SpacedRepetitionOutside, RunsWorkedOutByHand) {
  expect_run({{4, 1, 250}, {4, 6, 250}, {4, 15, 250}, {4, 38, 250}, {4, 95, 250}, {4, 238, 250}});
  expect_run({{5, 1, 260}, {5, 6, 270}, {5, 17, 280}, {5, 50, 290}, {5, 150, 300}});
  expect_run({{3, 1, 236}, {3, 6, 222}, {3, 13, 208}, {3, 26, 194}, {3, 47, 180}});
  expect_run({{4, 1, 250},
              {3, 6, 236},
              {5, 15, 246},
              {2, 1, 246},
              {4, 1, 246},
              {5, 6, 256},
              {5, 16, 266}});
}

// Same section: "q < 4: repeat until it is at least 4", on the same day.
TEST(SpacedRepetitionOutside, BelowFourItComesUpAgainTheSameDay) {
  for (int grade = 0; grade <= 5; ++grade) {
    const Repetition repetition = repeated({}, grade, kStart);
    EXPECT_EQ(repetition.due == kStart, grade < 4) << grade;
  }
}

}  // namespace
}  // namespace shoplore
