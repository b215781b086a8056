#include "query/practice/subject_turn.hpp"

#include <gtest/gtest.h>

#include <map>

namespace shoplore {
namespace {

const Date kToday = *parse_date("2026-03-02");

PractisedSubject due_in(const char* subject, int days) {
  return {
      PracticeKind::kCause, subject, {250, 2, 6, kToday, {kToday.days + std::chrono::days(days)}}};
}

// Of ten thousand turns half are due; of the other half each of three subjects has a third. Five
// standard deviations are at most 250.
TEST(SubjectTurn, HalfIsDueAndHalfComesUpByChance) {
  ApprenticeRecord record;
  record.subjects = {due_in("due", -3), due_in("lately", 5)};
  const std::uint64_t seed = 20'260'302;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  std::map<std::pair<std::string, Drawn>, int> turns;
  for (int i = 0; i < 10'000; ++i) {
    const Turn turn =
        next_turn({"due", "lately", "new"}, PracticeKind::kCause, record, kToday, random);
    ++turns[{turn.subject, turn.drawn}];
  }
  EXPECT_NEAR((turns[{"due", Drawn::kDue}]), 5'000, 250);
  for (const char* subject : {"due", "lately", "new"}) {
    EXPECT_NEAR((turns[{subject, Drawn::kByChance}]), 1'667, 190) << subject;
  }
  EXPECT_EQ(turns.size(), 4U);
}

TEST(SubjectTurn, NothingDueIsAllByChance) {
  ApprenticeRecord record;
  record.subjects = {due_in("lately", 1)};
  std::mt19937_64 random(5);
  for (int i = 0; i < 100; ++i) {
    EXPECT_EQ(next_turn({"lately", "new"}, PracticeKind::kCause, record, kToday, random).drawn,
              Drawn::kByChance);
  }
}

TEST(SubjectTurn, OfThoseDueTheLongestOverdueComesFirstButNotTwiceRunning) {
  ApprenticeRecord record;
  record.subjects = {due_in("a", -1), due_in("b", -9), due_in("c", -20)};
  const auto due_next = [&] {
    std::mt19937_64 random(1);
    for (;;) {
      const Turn turn = next_turn({"a", "b", "c"}, PracticeKind::kCause, record, kToday, random);
      if (turn.drawn == Drawn::kDue) return turn.subject;
    }
  };
  EXPECT_EQ(due_next(), "c");
  record.results.resize(2);
  record.results[0].subject = "c";
  record.results[1].subject = "P0299";  // of another kind
  record.results[1].kind = PracticeKind::kCode;
  EXPECT_EQ(due_next(), "b");
}

}  // namespace
}  // namespace shoplore
