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

std::vector<std::string> keys(const std::vector<Turn>& turns) {
  std::vector<std::string> out;
  for (const Turn& each : turns) out.push_back(each.key);
  return out;
}

TEST(SubjectTurn, EverySubjectHasItsTurnOnce) {
  ApprenticeRecord record;
  record.subjects = {due_in("a", -3), due_in("b", 0), due_in("c", 5)};
  const std::vector<std::string> subjects{"a", "b", "c", "d", "e"};
  std::mt19937_64 random(3);
  EXPECT_THAT(keys(subjects_in_turn({{"a", 1}, {"b", 5}, {"c", 2}, {"d", 1}, {"e", 9}},
                                    PracticeKind::kCause, record, kToday, random)),
              UnorderedElementsAreArray(subjects));
}

// Of ten thousand turns half are due; of the other half each subject has its weight's share: 1, 2
// and 5 of 8. Five standard deviations are at most 250.
TEST(SubjectTurn, HalfIsDueAndHalfComesUpAsOftenAsItComesIn) {
  ApprenticeRecord record;
  record.subjects = {due_in("due", -3), due_in("lately", 5)};
  const std::uint64_t seed = 20'260'302;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  std::map<std::pair<std::string, Drawn>, int> first;
  for (int i = 0; i < 10'000; ++i) {
    const Turn turn = subjects_in_turn({{"due", 1}, {"lately", 2}, {"new", 5}},
                                       PracticeKind::kCause, record, kToday, random)
                          .front();
    ++first[{turn.key, turn.drawn}];
  }
  EXPECT_NEAR((first[{"due", Drawn::kDue}]), 5'000, 250);
  EXPECT_NEAR((first[{"due", Drawn::kByChance}]), 625, 125);
  EXPECT_NEAR((first[{"lately", Drawn::kByChance}]), 1'250, 170);
  EXPECT_NEAR((first[{"new", Drawn::kByChance}]), 3'125, 235);
  EXPECT_EQ(first.size(), 4U);
}

TEST(SubjectTurn, OfThoseDueTheLongestOverdueComesFirstAndTheLastAskedLast) {
  ApprenticeRecord record;
  record.subjects = {due_in("a", -1), due_in("b", -9), due_in("c", -20)};
  record.results.resize(2);
  record.results[0].subject = "c";
  record.results[1].subject = "P0299";
  record.results[1].kind = PracticeKind::kCode;
  int seen = 0;
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    std::mt19937_64 random(seed);
    std::vector<std::string> due;
    const auto turns = subjects_in_turn({{"a", 1}, {"b", 1}, {"c", 1}}, PracticeKind::kCause,
                                        record, kToday, random);
    for (const Turn& each : turns) {
      if (each.drawn == Drawn::kDue) due.push_back(each.key);
    }
    if (due.size() < 3) continue;
    ++seen;
    EXPECT_EQ(due, (std::vector<std::string>{"b", "a", "c"}));
  }
  EXPECT_GT(seen, 0);
}

}  // namespace
}  // namespace shoplore
