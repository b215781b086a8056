#include "query/patterns/limit_tests.hpp"

#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"components.json",
            R"({"kind":"component","entries":[{"id":"hose","name":"hose"},{"id":"turbo","name":"turbo"}]})"},
           {"checks.json",
            R"({"kind":"check","entries":[{"id":"look","name":"look","components":["hose"]},)"
            R"({"id":"round","name":"round"}]})"}})
          .value();
  return vocabulary;
}

struct Mined {
  explicit Mined(std::vector<PlainCase> cases) : counter(std::move(cases)) {}
  PlainCounter counter;
  CaseRows rows = CaseRows::of(counter).value();
  ExactTests exact{rows.cases};
};

PlainCase repaired(const std::string& cause) {
  return {cause, {{"earlier_repair:replace turbo", "present"}}, {"earlier_repairs"}};
}

PlainCase looked(const std::string& cause, const std::string& check, const std::string& verdict) {
  return {cause, {{"check:" + check, verdict}}};
}

TEST(LimitTests, ARepairWasInVainWhenTheCauseWasOnAnotherPart) {
  std::vector<PlainCase> cases;
  add(cases, 9, repaired("hose:split"));
  add(cases, 1, repaired("turbo:worn"));
  add(cases, 20, {"hose:split", {}, {"earlier_repairs"}});
  const Mined mined(cases);
  const auto tests = tests_of_repairs(mined.rows, mined.counter.causes(), mined.exact);
  EXPECT_EQ(tests.tested, 1U);
  ASSERT_EQ(tests.met.size(), 1U);
  EXPECT_EQ(tests.met[0].table, (DiagnosticTable{9, 1, 0, 0}));
  EXPECT_NEAR(tests.met[0].p, 11.0 / 1024, 1e-12);  // nine of ten throws of a coin, or ten
}

TEST(LimitTests, InVainNoMoreOftenThanNotIsTestedAndNotMet) {
  std::vector<PlainCase> cases;
  add(cases, 6, repaired("hose:split"));
  add(cases, 6, repaired("turbo:worn"));
  const Mined mined(cases);
  const auto tests = tests_of_repairs(mined.rows, mined.counter.causes(), mined.exact);
  EXPECT_EQ(tests.tested, 1U);
  EXPECT_TRUE(tests.met.empty());
}

TEST(LimitTests, APassCountsWhereTheCheckTellsAboutThePart) {
  std::vector<PlainCase> cases;
  add(cases, 6, looked("hose:split", "look", "pass"));
  add(cases, 4, looked("hose:split", "look", "fail"));
  add(cases, 3, looked("hose:split", "look", "unclear"));
  add(cases, 9, looked("turbo:worn", "look", "pass"));
  add(cases, 9, looked("turbo:worn", "round", "pass"));
  const Mined mined(cases);
  const auto tests = tests_of_passes(mined.rows, mined.counter.causes(), words(), mined.exact);
  EXPECT_EQ(tests.tested, 1U);
  ASSERT_EQ(tests.met.size(), 1U);
  EXPECT_EQ(tests.met[0].table, (DiagnosticTable{6, 4, 0, 0}));
  EXPECT_NEAR(tests.met[0].p, mined.exact.binomial_more(6, 10, 0.1), 1e-15);
}

TEST(LimitTests, FewPassesAreNoPattern) {
  std::vector<PlainCase> cases;
  add(cases, 4, looked("hose:split", "look", "pass"));
  add(cases, 4, looked("hose:split", "look", "fail"));
  add(cases, 5, looked("turbo:worn", "look", "pass"));
  const Mined mined(cases);
  const auto tests = tests_of_passes(mined.rows, mined.counter.causes(), words(), mined.exact);
  EXPECT_EQ(tests.tested, 1U);
  EXPECT_TRUE(tests.met.empty());
}

TEST(LimitTests, ThePartOfARepairIsReadFromItsAttribute) {
  EXPECT_EQ(repaired_part("earlier_repair:replace turbo"), "turbo");
}

}  // namespace
}  // namespace shoplore::testing
