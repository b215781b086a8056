// When something practised should come up again: SM-2.
//
// P. A. Wozniak, Optimization of learning, Master's thesis, University of Technology in Poznan,
// 1990, section 3.2. Grades 0 to 5:
//   I(1) = 1 day, I(2) = 6 days, I(n) = I(n-1) EF
//   EF starts at 2.5; EF' = EF + (0.1 - (5 - q) (0.08 + (5 - q) 0.02)); never below 1.3
//   q < 3: from I(1) again, EF as it was
//   q < 4: once more on the same day, until it is 4 or better
// The text leaves open which EF makes I(n) and how fractions become days. Here: EF' of the same
// repetition, and fractions of a day count as a day (rounded up). EF is kept in hundredths, because
// a binary fraction just above a whole number would round up to the next day.
// The thesis says nothing of what comes up before its day. Here: remembered, it changes nothing (so
// the same-day repetitions only end the day's work); not remembered on a later day, it starts anew.
// Knows no clock and no person. Pure functions, any thread.
#pragma once

#include "indexer/quantities.hpp"

namespace shoplore {

// EF in hundredths.
inline constexpr int kFirstEasiness = 250, kLeastEasiness = 130;
// A grade below the first starts anew; one below the second comes up again the same day.
inline constexpr int kGradeRemembered = 3, kGradeKnown = 4, kBestGrade = 5;

struct Repetition {
  int easiness = kFirstEasiness;
  int in_a_row = 0;       // repetitions remembered since the last one that was not
  int interval_days = 0;  // from `last` to the next; 0: never practised
  Date last{};            // day of the last repetition that counted
  Date due{};             // comes up that day or later
  friend bool operator==(const Repetition&, const Repetition&) = default;
};

// After a repetition on that day. Requires: 0 <= grade <= kBestGrade.
[[nodiscard]] Repetition repeated(const Repetition& before, int grade, Date today);

}  // namespace shoplore
