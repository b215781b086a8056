#include "query/checks/next_check.hpp"

#include <gtest/gtest.h>

#include <map>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

// "behind" is quick but lies behind a cover of 60 minutes; "slow" takes 20 and lies open; both tell
// a from b equally well. "vague" tells nothing. "hums" can be asked.
const char* const kWords = R"({"kind":"check","entries":[
  {"id":"behind","name":"behind the cover","minutes":2,"removals":["cover"]},
  {"id":"slow","name":"slow","minutes":20},
  {"id":"vague","name":"vague","minutes":1},
  {"id":"old","name":"old","minutes":1,"retired":"no longer done"}]})";
const char* const kRemovals = R"({"kind":"removal","entries":[
  {"id":"cover","name":"cover","minutes":60}]})";

Vocabulary words() {
  return *Vocabulary::parse({{"checks.json", kWords}, {"removals.json", kRemovals}});
}

std::vector<PlainCase> twenty_cases() {
  std::vector<PlainCase> cases;
  for (int i = 0; i < 20; ++i) {
    const bool is_a = i % 2 == 0;
    const std::string verdict = is_a ? "fail" : "pass";
    cases.push_back({is_a ? "a:x" : "b:x",
                     {{"check:behind", verdict},
                      {"check:slow", verdict},
                      {"check:old", verdict},
                      {"check:vague", i % 4 < 2 ? "fail" : "pass"},
                      {"symptom:hums", is_a ? "present" : "absent"}}});
  }
  return cases;
}

std::vector<std::string> names(const std::vector<CheckChoice>& choices) {
  std::vector<std::string> names;
  for (const CheckChoice& choice : choices) names.push_back(choice.attribute);
  return names;
}

using Names = std::vector<std::string>;

struct NextCheck : ::testing::Test {
  const Vocabulary vocabulary = words();
  const PlainCounter counter{twenty_cases()};
  const std::vector<AnswerRates> rates = *answer_rates(counter, 2);
  const WorkFigures figures;
  const CheckBasis basis{rates, figures, vocabulary};
  const std::vector<double> even{.5, .5, 0};
};

TEST_F(NextCheck, ACheapOneBehindAClosedCoverWaitsUntilItIsOff) {
  const NextChecks closed = rate_checks(even, {}, {}, basis);
  EXPECT_EQ(names(closed.checks), (Names{"check:slow", "check:behind"}));
  EXPECT_EQ(closed.checks[1].removals, Names{"cover"});
  EXPECT_EQ(closed.checks[1].removal_minutes, 60);
  const NextChecks open = rate_checks(even, {}, {{"cover"}, {}}, basis);
  EXPECT_EQ(names(open.checks), (Names{"check:behind", "check:slow"}));
  EXPECT_EQ(open.checks[0].removal_minutes, 0);
}

TEST_F(NextCheck, QuestionsAreApartAndCostAMinute) {
  const NextChecks next = rate_checks(even, {}, {}, basis);
  EXPECT_EQ(names(next.questions), Names{"symptom:hums"});
  EXPECT_EQ(next.questions[0].minutes, kQuestionMinutes);
  EXPECT_GT(next.questions[0].per_minute, next.checks[0].per_minute);
}

TEST_F(NextCheck, WhatIsKnownRetiredOrNotPossibleIsNotProposed) {
  EXPECT_EQ(names(rate_checks(even, {{"check:slow", "pass"}}, {}, basis).checks),
            Names{"check:behind"});
  EXPECT_EQ(names(rate_checks(even, {}, {{}, {"slow"}}, basis).checks), Names{"check:behind"});
}

TEST_F(NextCheck, NothingIsProposedOnceTheCauseIsKnown) {
  const NextChecks next = rate_checks({1, 0, 0}, {}, {}, basis);
  EXPECT_TRUE(next.checks.empty());
  EXPECT_TRUE(next.questions.empty());
}

TEST_F(NextCheck, OwnMinutesStandOnceEnoughWereWrittenDown) {
  WorkFigures own;
  own.checks["slow"] = {3, kFewestTimed - 1};
  EXPECT_EQ(own.check_minutes("slow", vocabulary), 20);
  own.checks["slow"] = {3, kFewestTimed};
  EXPECT_EQ(own.check_minutes("slow", vocabulary), 3);
  EXPECT_EQ(own.check_minutes("never heard of", vocabulary), kUsualMinutes);
}

TEST_F(NextCheck, OutlooksAddUpToWhatIsSaidNow) {
  const RankingModel model = RankingModel::of(counter, {}).value();
  const Ranking ranking = model.rank({}, {}).value();
  const NextChecks next = next_checks(ranking, {}, counter, {}, basis).value();
  ASSERT_FALSE(next.checks.empty());
  const auto now = probabilities_by_cause(ranking, counter.causes().size());
  double all = 0;
  std::map<CauseNumber, double> mean;
  for (const Outlook& outlook : next.checks[0].outlooks) {
    all += outlook.probability;
    EXPECT_GE(outlook.leading[0].second, outlook.leading[1].second);
    for (const auto& [cause, probability] : outlook.leading) {
      mean[cause] += outlook.probability * probability;
    }
  }
  EXPECT_NEAR(all, 1, 1e-12);
  for (const auto& [cause, probability] : mean) EXPECT_NEAR(probability, now[cause], 1e-12);
  // Every case of a failed, none of b: with m = 2, half of all.
  const auto after = causes_after({.5, .5, 0}, {11.0 / 12, 1.0 / 12, .5});
  EXPECT_NEAR(after[0], 11.0 / 12, 1e-12);
}

TEST_F(NextCheck, WhatWasNeverAskedWithTheFindingsIsNotProposed) {
  std::vector<PlainCase> cases = twenty_cases();
  for (int i = 0; i < 3; ++i) cases.push_back({"a:x", {{"symptom:smokes", "present"}}});
  const PlainCounter more(cases);
  const RankingModel model = RankingModel::of(more, {}).value();
  const std::vector<EvidenceItem> smokes{{"symptom:smokes", "present"}};
  const auto unrelated =
      next_checks(model.rank(smokes, {}).value(), smokes, more, {}, basis).value();
  EXPECT_TRUE(unrelated.checks.empty());
  for (int i = 0; i < 3; ++i) {
    cases.push_back({"b:x", {{"symptom:smokes", "present"}, {"check:slow", "pass"}}});
  }
  const PlainCounter related(cases);
  const RankingModel again = RankingModel::of(related, {}).value();
  const auto next = next_checks(again.rank(smokes, {}).value(), smokes, related, {}, basis).value();
  EXPECT_EQ(names(next.checks), Names{"check:slow"});
}

// pass 6 times, fail 3, mixed once, unclear twice; by hand with m = 2.
TEST(AnswerRates, MixedIsAFailAndUnclearIsNoAnswer) {
  std::vector<PlainCase> cases;
  const auto add = [&](const std::string& cause, const std::string& verdict, int times) {
    for (int i = 0; i < times; ++i) cases.push_back({cause, {{"check:look", verdict}}});
  };
  add("a:x", "pass", 6);
  add("b:x", "fail", 3);
  add("b:x", "mixed", 1);
  add("b:x", "unclear", 2);
  const auto rates = answer_rates(PlainCounter(cases), 2).value();
  ASSERT_EQ(rates.size(), 1U);
  ASSERT_EQ(rates[0].answers, (Names{"fail", "pass"}));
  EXPECT_EQ(rates[0].asked, 12U);
  EXPECT_DOUBLE_EQ(rates[0].answerable, 11.0 / 13);
  const double fails = 4.5 / 11;
  EXPECT_DOUBLE_EQ(rates[0].rates[0][0], 2 * fails / 8);
  EXPECT_DOUBLE_EQ(rates[0].rates[0][1], (4 + 2 * fails) / 6);
  EXPECT_DOUBLE_EQ(rates[0].rates[0][2], fails);
  EXPECT_DOUBLE_EQ(rates[0].rates[0][1] + rates[0].rates[1][1], 1);
}

TEST(AnswerRates, WhatWasAskedTooSeldomIsLeftOut) {
  std::vector<PlainCase> cases;
  for (std::uint32_t i = 0; i + 1 < kFewestAsked; ++i) {
    cases.push_back({"a:x", {{"check:look", i % 2 == 0 ? "pass" : "fail"}}});
  }
  EXPECT_TRUE(answer_rates(PlainCounter(cases), 2).value().empty());
  cases.push_back({"a:x", {{"check:look", "pass"}}});
  EXPECT_EQ(answer_rates(PlainCounter(cases), 2).value().size(), 1U);
}

}  // namespace
}  // namespace shoplore::testing
