#include "query/practice/spaced_repetition.hpp"

#include <algorithm>

namespace shoplore {
namespace {

constexpr int kFirstInterval = 1, kSecondInterval = 6;

// EF' - EF in hundredths: 10 - (5 - q) (8 + (5 - q) 2).
int change_of_easiness(int grade) {
  const int short_of_best = kBestGrade - grade;
  return 10 - short_of_best * (8 + short_of_best * 2);
}

int next_interval(int in_a_row, int before, int easiness) {
  if (in_a_row == 1) return kFirstInterval;
  if (in_a_row == 2) return kSecondInterval;
  return (before * easiness + 99) / 100;
}

// Before its day: what was said above of it.
Repetition repeated_early(const Repetition& before, int grade, Date today) {
  Repetition after = before;
  after.due = grade < kGradeKnown
                  ? today
                  : Date{before.last.days + std::chrono::days(before.interval_days)};
  return after;
}

}  // namespace

Repetition repeated(const Repetition& before, int grade, Date today) {
  const bool early = today.days < before.last.days + std::chrono::days(before.interval_days);
  const bool remembered = grade >= kGradeRemembered;
  if (early && (remembered || before.last == today)) return repeated_early(before, grade, today);
  Repetition after = before;
  after.last = today;
  if (remembered) {
    after.easiness = std::max(kLeastEasiness, before.easiness + change_of_easiness(grade));
    ++after.in_a_row;
    after.interval_days = next_interval(after.in_a_row, before.interval_days, after.easiness);
  } else {
    after.in_a_row = 0;
    after.interval_days = kFirstInterval;
  }
  after.due = {today.days + std::chrono::days(grade < kGradeKnown ? 0 : after.interval_days)};
  return after;
}

}  // namespace shoplore
