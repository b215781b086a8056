// Trust in a check from cases made by hand, counted on the fingers.
#include "query/checks/check_trust.hpp"

#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const std::string kHose = "hose:split", kTurbo = "turbo:worn", kSensor = "sensor:drifting";

// `look` tells about the hose, `round` about nothing; `peek` is an older name of `look`.
const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"components.json",
            R"({"kind":"component","entries":[{"id":"hose","name":"hose"},)"
            R"({"id":"turbo","name":"turbo"},{"id":"sensor","name":"sensor"}]})"},
           {"checks.json",
            R"({"kind":"check","entries":[{"id":"look","name":"look","components":["hose"]},)"
            R"({"id":"peek","name":"peek","alias_of":"look"},)"
            R"({"id":"round","name":"look round"}]})"}})
          .value();
  return vocabulary;
}

PlainCase one(const std::string& cause, const std::string& verdict,
              const std::vector<std::string>& said = {}, const std::string& check = "look") {
  PlainCase made{cause, {{"check:" + check, verdict}}};
  for (const std::string& each : said) made.items.push_back({each + ":" + check, verdict});
  return made;
}

CheckTrust trusted(const std::vector<PlainCase>& cases, const std::string& check = "look") {
  return trust_of(PlainCounter(cases), check, words()).value();
}

struct Expected {
  std::uint32_t given, borne_out, right, misled, unknown;
};

void expect_trust(const VerdictTrust& trust, const Expected& expected) {
  EXPECT_EQ(trust.given, expected.given);
  EXPECT_EQ(trust.borne_out, expected.borne_out);
  EXPECT_EQ(trust.right, expected.right);
  EXPECT_EQ(trust.misled, expected.misled);
  EXPECT_EQ(trust.unknown, expected.unknown);
  EXPECT_EQ(trust.misled_us.count, expected.misled);
  EXPECT_EQ(trust.misled_us.out_of, expected.given - expected.unknown);
  EXPECT_EQ(trust.misled_us.interval, jeffreys(trust.misled_us.count, trust.misled_us.out_of));
}

TEST(CheckTrust, OneVerdictByCauseAndWhatWasSaid) {
  const struct {
    const char* name;
    PlainCase record;
    Expected pass, fail;
  } rows[] = {
      {"pass, another part", one(kTurbo, "pass"), {1, 1, 0, 0, 0}, {0, 0, 0, 0, 0}},
      {"pass, that part, nothing said", one(kHose, "pass"), {1, 0, 0, 0, 1}, {0, 0, 0, 0, 0}},
      {"pass, that part, misled", one(kHose, "pass", {"misled"}), {1, 0, 0, 1, 0}, {0, 0, 0, 0, 0}},
      {"pass, that part, yet right",
       one(kHose, "pass", {"right"}),
       {1, 0, 1, 0, 0},
       {0, 0, 0, 0, 0}},
      {"fail, that part", one(kHose, "fail"), {0, 0, 0, 0, 0}, {1, 1, 0, 0, 0}},
      {"fail, another part, nothing said", one(kTurbo, "fail"), {0, 0, 0, 0, 0}, {1, 0, 0, 0, 1}},
      {"fail, another part, misled",
       one(kTurbo, "fail", {"misled"}),
       {0, 0, 0, 0, 0},
       {1, 0, 0, 1, 0}},
      {"fail, another part, yet right",
       one(kTurbo, "fail", {"right"}),
       {0, 0, 0, 0, 0},
       {1, 0, 1, 0, 0}},
      {"fail, that part, misled all the same",
       one(kHose, "fail", {"misled"}),
       {0, 0, 0, 0, 0},
       {1, 0, 0, 1, 0}},
      {"pass twice, both said",
       one(kHose, "pass", {"misled", "right"}),
       {1, 0, 0, 1, 0},
       {0, 0, 0, 0, 0}},
      {"unclear", one(kHose, "unclear"), {0, 0, 0, 0, 0}, {0, 0, 0, 0, 0}},
      {"mixed", one(kHose, "mixed", {"misled"}), {0, 0, 0, 0, 0}, {0, 0, 0, 0, 0}},
      {"another check", one(kHose, "pass", {"misled"}, "round"), {0, 0, 0, 0, 0}, {0, 0, 0, 0, 0}}};
  for (const auto& row : rows) {
    SCOPED_TRACE(row.name);
    const CheckTrust trust = trusted({row.record});
    expect_trust(trust.pass, row.pass);
    expect_trust(trust.fail, row.fail);
  }
}

// 13 + 4 hoses, 2 + 20 others; 3 unclear and 2 mixed stay out of the table.
std::vector<PlainCase> many() {
  std::vector<PlainCase> cases;
  add(cases, 13, one(kHose, "fail"));
  add(cases, 3, one(kHose, "pass", {"misled"}));
  add(cases, 1, one(kHose, "pass"));
  add(cases, 2, one(kTurbo, "fail", {"misled"}));
  add(cases, 12, one(kTurbo, "pass"));
  add(cases, 8, one(kSensor, "pass"));
  add(cases, 3, one(kHose, "unclear"));
  add(cases, 2, one(kTurbo, "mixed"));
  add(cases, 40, {kHose, {{"symptom:lack_of_power", "present"}}});
  return cases;
}

TEST(CheckTrust, CountsTheTableOfFailAndTheCause) {
  const CheckTrust trust = trusted(many());
  EXPECT_EQ(trust.table, (DiagnosticTable{13, 2, 4, 20}));
  EXPECT_EQ(trust.done, 44U);
  EXPECT_EQ(trust.unclear, 3U);
  EXPECT_EQ(trust.mixed, 2U);
  expect_trust(trust.pass, {24, 20, 0, 3, 1});
  expect_trust(trust.fail, {15, 13, 0, 2, 0});
  const DiagnosticAccuracy accuracy = trust.accuracy();
  EXPECT_EQ(accuracy.sensitivity.count, 13U);
  EXPECT_EQ(accuracy.sensitivity.out_of, 17U);
  EXPECT_EQ(accuracy.specificity.count, 20U);
  EXPECT_EQ(accuracy.specificity.out_of, 22U);
  EXPECT_NEAR(accuracy.positive_ratio->value, (13.0 / 17) / (2.0 / 22), 1e-12);
  EXPECT_NEAR(accuracy.negative_ratio->value, (4.0 / 17) / (20.0 / 22), 1e-12);
}

TEST(CheckTrust, SaysHowOftenItWasWrongOfEachCause) {
  const auto rows = trusted(many()).by_cause;
  ASSERT_EQ(rows.size(), 3U);
  const struct {
    std::string cause;
    bool told_about;
    std::uint32_t pass, fail, misled, against;
  } expected[] = {
      {kHose, true, 4, 13, 3, 4}, {kTurbo, false, 12, 2, 2, 2}, {kSensor, false, 8, 0, 0, 0}};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_EQ(rows[i].cause, expected[i].cause);
    EXPECT_EQ(rows[i].told_about, expected[i].told_about);
    EXPECT_EQ(rows[i].pass, expected[i].pass);
    EXPECT_EQ(rows[i].fail, expected[i].fail);
    EXPECT_EQ(rows[i].misled, expected[i].misled);
    EXPECT_EQ(rows[i].against.count, expected[i].against);
    EXPECT_EQ(rows[i].against.out_of, expected[i].pass + expected[i].fail);
  }
}

TEST(CheckTrust, ACheckThatTellsAboutNothingHasNoTableAndUnknownVerdicts) {
  std::vector<PlainCase> cases;
  add(cases, 6, one(kHose, "fail", {}, "round"));
  add(cases, 2, one(kHose, "pass", {"misled"}, "round"));
  add(cases, 1, one(kTurbo, "pass", {"right"}, "round"));
  const CheckTrust trust = trusted(cases, "round");
  EXPECT_FALSE(trust.tells_about_components);
  EXPECT_EQ(trust.table, DiagnosticTable{});
  EXPECT_FALSE(trust.accuracy().positive_ratio);
  expect_trust(trust.fail, {6, 0, 0, 0, 6});
  expect_trust(trust.pass, {3, 0, 1, 2, 0});
}

TEST(CheckTrust, AnOlderNameIsTheSameCheck) {
  EXPECT_EQ(trusted(many(), "peek").check, "look");
  EXPECT_EQ(trusted(many(), "peek").table, trusted(many()).table);
}

TEST(CheckTrust, OfACheckNeverDoneNothingIsKnown) {
  for (const char* check : {"round", "not_in_the_vocabulary"}) {
    const CheckTrust trust = trusted(many(), check);
    EXPECT_EQ(trust.done, 0U) << check;
    EXPECT_EQ(trust.pass.misled_us.interval, (Interval{0, 1})) << check;
    EXPECT_TRUE(trust.by_cause.empty()) << check;
  }
}

TEST(CheckTrust, AFilterNarrowsIt) {
  std::vector<PlainCase> cases = many();
  PlainCase cormont = one(kHose, "pass", {"misled"});
  cormont.items.push_back({"make", "cormont"});
  add(cases, 5, cormont);
  Filter filter;
  filter.make = "cormont";
  const auto trust = trust_of(PlainCounter(cases), "look", words(), filter).value();
  EXPECT_EQ(trust.table, (DiagnosticTable{0, 0, 5, 0}));
}

TEST(CheckTrust, EveryCheckDoneIsListedMostOftenDoneFirst) {
  std::vector<PlainCase> cases = many();
  add(cases, 50, one(kHose, "fail", {}, "round"));
  const auto all = trust_in_checks(PlainCounter(cases), words()).value();
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].check, "round");
  EXPECT_EQ(all[1].check, "look");
  EXPECT_EQ(all[1].table, trusted(cases).table);
  EXPECT_TRUE(trust_in_checks(PlainCounter({}), words())->empty());
}

}  // namespace
}  // namespace shoplore::testing
