#include "query/practice/subject_turn.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

namespace shoplore {
namespace {

using ::testing::UnorderedElementsAreArray;

const Date kToday = *parse_date("2026-03-02");

PractisedSubject due_in(const char* subject, int days) {
  return {
      PracticeKind::kCause, subject, {250, 2, 6, kToday, {kToday.days + std::chrono::days(days)}}};
}

TEST(SubjectTurn, EverySubjectHasItsTurnOnce) {
  ApprenticeRecord record;
  record.subjects = {due_in("a", -3), due_in("b", 0), due_in("c", 5)};
  const std::vector<std::string> subjects{"a", "b", "c", "d", "e"};
  std::mt19937_64 random(3);
  EXPECT_THAT(subjects_in_turn(subjects, PracticeKind::kCause, record, kToday, random),
              UnorderedElementsAreArray(subjects));
}

// Of ten thousand first turns 5 in 10 are due, 3 never seen, 2 seen lately: within five standard
// deviations (at most 50 each).
TEST(SubjectTurn, DueNewAndLatelySeenAreMixed) {
  ApprenticeRecord record;
  record.subjects = {due_in("due", -3), due_in("lately", 5)};
  const std::uint64_t seed = 20'260'302;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  std::map<std::string, int> first;
  for (int i = 0; i < 10'000; ++i) {
    ++first[subjects_in_turn({"due", "lately", "new"}, PracticeKind::kCause, record, kToday, random)
                .front()];
  }
  EXPECT_NEAR(first["due"], 5'000, 250);
  EXPECT_NEAR(first["new"], 3'000, 250);
  EXPECT_NEAR(first["lately"], 2'000, 250);
}

TEST(SubjectTurn, OfThoseDueTheLongestOverdueComesFirst) {
  ApprenticeRecord record;
  record.subjects = {due_in("a", -1), due_in("b", -9), due_in("c", 0)};
  std::mt19937_64 random(1);
  EXPECT_EQ(subjects_in_turn({"a", "b", "c"}, PracticeKind::kCause, record, kToday, random),
            (std::vector<std::string>{"b", "a", "c"}));
}

TEST(SubjectTurn, WhatWasAskedLastComesLast) {
  ApprenticeRecord record;
  record.results.resize(2);
  record.results[0].subject = "a";
  record.results[1].subject = "P0299";
  record.results[1].kind = PracticeKind::kCode;
  std::mt19937_64 random(1);
  for (int i = 0; i < 50; ++i) {
    EXPECT_EQ(
        subjects_in_turn({"a", "b", "c"}, PracticeKind::kCause, record, kToday, random).back(),
        "a");
  }
}

}  // namespace
}  // namespace shoplore
