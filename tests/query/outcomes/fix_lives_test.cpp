#include "query/outcomes/fix_lives.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/visits.hpp"

namespace shoplore {
namespace {

using std::chrono::days;
using testing::complaint;
using testing::day;
using testing::kTurbo;
using testing::repaired;
using testing::service;
using testing::vehicle;

PastVisit with_outcome(PastVisit visit, OutcomeStatus status, const char* as_of,
                       std::optional<Kilometres> km = {},
                       std::optional<ComebackReason> reason = {}) {
  visit.outcome = Outcome{status, as_of ? std::optional(day(as_of)) : std::nullopt, km, reason};
  return visit;
}

PastVisit following(PastVisit visit, const std::string& ref) {
  visit.follows = ref;
  return visit;
}

PastVisit of_cause(PastVisit visit, const std::string& cause) {
  visit.cause = cause;
  return visit;
}

// Of the repair "r" on 2026-01-10 at 100,000 km, the visits after it and what follows from them.
struct Row {
  const char* name;
  PastVisit fixed;
  std::vector<PastVisit> later;
  FixEnd end;
  HeardFrom heard_from;
  std::optional<days> lasted;
  std::optional<Kilometres> km;
};

const PastVisit kFixed = repaired("r", "2026-01-10", 100'000);

void expect_row(const Row& row) {
  std::vector<PastVisit> visits{row.fixed};
  visits.insert(visits.end(), row.later.begin(), row.later.end());
  const auto lives = fix_lives({vehicle(visits)});
  ASSERT_FALSE(lives.empty()) << row.name;
  const FixLife& life = lives.front();
  EXPECT_EQ(life.ref, "r") << row.name;
  EXPECT_EQ(life.end, row.end) << row.name;
  EXPECT_EQ(life.heard_from, row.heard_from) << row.name;
  EXPECT_EQ(life.days, row.lasted) << row.name;
  EXPECT_EQ(life.km, row.km) << row.name;
}

TEST(FixLives, EndAtARecordedComeback) {
  const auto came_back = [](const char* as_of, std::optional<Kilometres> km) {
    return with_outcome(kFixed, OutcomeStatus::kCameBack, as_of, km, ComebackReason::kPart);
  };
  const PastVisit back = complaint("b", "2026-03-11", 104'000, {"lack_of_power"});
  const std::vector<Row> table{{"day and km recorded",
                                came_back("2026-03-01", Kilometres{103'000}),
                                {},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                Kilometres{3'000}},
                               {"km from the case that follows",
                                came_back("2026-03-01", {}),
                                {following(back, "r")},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                Kilometres{4'000}},
                               {"day from the case that follows",
                                came_back(nullptr, {}),
                                {following(back, "r")},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                days{60},
                                Kilometres{4'000}},
                               {"nobody wrote the day",
                                came_back(nullptr, {}),
                                {},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                {},
                                {}},
                               {"a service in between changes nothing",
                                came_back("2026-03-01", {}),
                                {service("2026-02-01", 101'000)},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                {}},
                               {"the odometer went backwards",
                                came_back("2026-03-01", Kilometres{3'000}),
                                {},
                                FixEnd::kCameBack,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                {}}};
  for (const Row& row : table) expect_row(row);
}

TEST(FixLives, EndAtACaseThatFollowsWhateverWasRecorded) {
  const PastVisit back = following(complaint("b", "2026-03-11", 104'000, {"rough_idle"}), "r");
  const std::vector<Row> table{{"no outcome",
                                kFixed,
                                {back},
                                FixEnd::kCameBack,
                                HeardFrom::kLaterVisit,
                                days{60},
                                Kilometres{4'000}},
                               {"stayed fixed before",
                                with_outcome(kFixed, OutcomeStatus::kStayedFixed, "2026-02-01"),
                                {back},
                                FixEnd::kCameBack,
                                HeardFrom::kLaterVisit,
                                days{60},
                                Kilometres{4'000}},
                               {"the first of two",
                                kFixed,
                                {back, following(complaint("c", "2026-05-01", 106'000, {}), "r")},
                                FixEnd::kCameBack,
                                HeardFrom::kLaterVisit,
                                days{60},
                                Kilometres{4'000}}};
  for (const Row& row : table) expect_row(row);
}

TEST(FixLives, EndAtACaseThatFollowsOnAnotherVehiclesPages) {
  // The earlier case never had its token written down.
  const auto lives = fix_lives(
      {vehicle({following(complaint("b", "2026-03-11", 104'000, {}), "r")}), vehicle({kFixed})});
  ASSERT_EQ(lives.size(), 1U);
  EXPECT_EQ(lives.front().end, FixEnd::kCameBack);
  EXPECT_EQ(lives.front().days, days{60});
}

TEST(FixLives, AnUnrelatedComebackShowsTheFixHeld) {
  const PastVisit fixed = with_outcome(kFixed, OutcomeStatus::kCameBack, "2026-03-01",
                                       Kilometres{103'000}, ComebackReason::kUnrelated);
  const PastVisit back = following(complaint("b", "2026-03-01", 103'000, {"lack_of_power"}), "r");
  const std::vector<Row> table{{"alone",
                                fixed,
                                {},
                                FixEnd::kStillFixed,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                Kilometres{3'000}},
                               {"linked",
                                fixed,
                                {back},
                                FixEnd::kStillFixed,
                                HeardFrom::kRecordedOutcome,
                                days{50},
                                Kilometres{3'000}},
                               {"a service afterwards",
                                fixed,
                                {back, service("2026-06-09", 108'000)},
                                FixEnd::kStillFixed,
                                HeardFrom::kLaterVisit,
                                days{150},
                                Kilometres{8'000}}};
  for (const Row& row : table) expect_row(row);
}

TEST(FixLives, LastAsLongAsAnybodySawThem) {
  const auto stayed = [](const char* as_of, std::optional<Kilometres> km = {}) {
    return with_outcome(kFixed, OutcomeStatus::kStayedFixed, as_of, km);
  };
  const PastVisit other = complaint("o", "2026-04-20", 105'000, {"rough_idle"});
  const std::vector<Row> table{
      {"nothing known", kFixed, {}, FixEnd::kNotHeardOf, HeardFrom::kNothing, {}, {}},
      {"asked, nobody knew",
       with_outcome(kFixed, OutcomeStatus::kUnknown, "2026-03-01"),
       {},
       FixEnd::kNotHeardOf,
       HeardFrom::kNothing,
       {},
       {}},
      {"recorded",
       stayed("2026-03-01", Kilometres{103'000}),
       {},
       FixEnd::kStillFixed,
       HeardFrom::kRecordedOutcome,
       days{50},
       Kilometres{3'000}},
      {"recorded without a day",
       stayed(nullptr),
       {},
       FixEnd::kStillFixed,
       HeardFrom::kRecordedOutcome,
       {},
       {}},
      {"a service",
       kFixed,
       {service("2026-04-20", 105'000)},
       FixEnd::kStillFixed,
       HeardFrom::kLaterVisit,
       days{100},
       Kilometres{5'000}},
      {"another complaint",
       kFixed,
       {other},
       FixEnd::kStillFixed,
       HeardFrom::kLaterVisit,
       days{100},
       Kilometres{5'000}},
      {"same symptom, another cause",
       kFixed,
       {of_cause(complaint("o", "2026-04-20", 105'000, {"lack_of_power"}), kTurbo),
        service("2026-06-09", 108'000)},
       FixEnd::kStillFixed,
       HeardFrom::kLaterVisit,
       days{150},
       Kilometres{8'000}},
      {"recorded later than visited",
       stayed("2026-06-09"),
       {other},
       FixEnd::kStillFixed,
       HeardFrom::kRecordedOutcome,
       days{150},
       Kilometres{5'000}},
      {"visited later than recorded",
       stayed("2026-03-01"),
       {other},
       FixEnd::kStillFixed,
       HeardFrom::kLaterVisit,
       days{100},
       Kilometres{5'000}},
      {"the same day",
       kFixed,
       {complaint("s", "2026-01-10", 100'000, {"rough_idle"})},
       FixEnd::kNotHeardOf,
       HeardFrom::kNothing,
       {},
       {}}};
  for (const Row& row : table) expect_row(row);
}

TEST(FixLives, AreNotWatchedPastAComplaintNobodyLinked) {
  const PastVisit again = complaint("a", "2026-04-20", 105'000, {"lack_of_power"});
  const PastVisit nothing_said = complaint("n", "2026-04-20", 105'000, {});
  const PastVisit later = service("2026-06-09", 108'000);
  const std::vector<Row> table{{"same complaint",
                                kFixed,
                                {again, later},
                                FixEnd::kStillFixed,
                                HeardFrom::kLaterVisit,
                                days{100},
                                Kilometres{5'000}},
                               {"nothing written down",
                                kFixed,
                                {nothing_said, later},
                                FixEnd::kStillFixed,
                                HeardFrom::kLaterVisit,
                                days{100},
                                Kilometres{5'000}},
                               {"but recorded on or after that day",
                                with_outcome(kFixed, OutcomeStatus::kStayedFixed, "2026-04-20"),
                                {again, later},
                                FixEnd::kStillFixed,
                                HeardFrom::kLaterVisit,
                                days{150},
                                Kilometres{8'000}},
                               {"recorded before it",
                                with_outcome(kFixed, OutcomeStatus::kStayedFixed, "2026-04-19"),
                                {again, later},
                                FixEnd::kStillFixed,
                                HeardFrom::kLaterVisit,
                                days{100},
                                Kilometres{5'000}}};
  for (const Row& row : table) expect_row(row);
}

TEST(FixLives, BeginWhenTheWorkWasDone) {
  PastVisit fixed = kFixed;
  fixed.closed = day("2026-01-20");
  expect_row({"ten days later",
              fixed,
              {service("2026-04-20", 105'000)},
              FixEnd::kStillFixed,
              HeardFrom::kLaterVisit,
              days{90},
              Kilometres{5'000}});
}

TEST(FixLives, AreOfClosedCasesInWhichSomethingWasDone) {
  PastVisit looked_only = repaired("l", "2026-01-10", 100'000);
  looked_only.fixes.clear();
  PastVisit open = repaired("o", "2026-02-10", 101'000);
  open.state = CaseState::kOpen;
  EXPECT_TRUE(fix_lives({vehicle({looked_only, open})}).empty());
  EXPECT_TRUE(fix_lives({}).empty());
}

TEST(FixLives, SayWhoseTheyWere) {
  const auto lives = fix_lives({vehicle({kFixed}, std::string(32, 'b'))});
  ASSERT_EQ(lives.size(), 1U);
  EXPECT_EQ(lives[0].vehicle, std::string(32, 'b'));
  EXPECT_EQ(lives[0].make, "brackwater");
  EXPECT_EQ(lives[0].engine_family, "bw16d");
  EXPECT_EQ(lives[0].cause, testing::kLinkage);
  EXPECT_EQ(lives[0].fixes, std::vector<std::string>{"replace wastegate_linkage"});
  EXPECT_EQ(lives[0].done, day("2026-01-10"));
}

}  // namespace
}  // namespace shoplore
