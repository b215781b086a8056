#include "query/ranking/findings_held.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <random>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const EvidenceItem kFlat{"symptom:flat", "present"}, kCold{"condition:cold", "present"};
const EvidenceItem kLeak{"check:leak", "fail"}, kMake{"make", "brackwater"};

FindingsHeld held_of(const PlainCounter& counter) {
  return {attribute_counts(counter).value(), counter.by_cause({}).value()};
}

// a: 3 and 1 findings, b: 1, c: none; the vehicle's make is none. R = 5/4.
PlainCounter small() {
  return PlainCounter({{"a:x", {kFlat, kCold, kLeak, kMake}},
                       {"a:x", {kFlat, kMake}},
                       {"b:x", {kFlat}},
                       {"c:x", {kMake}}});
}

TEST(FindingsHeld, EqualTheWorkedExample) {
  const std::vector<double> scarcity = held_of(small()).scarcity(3, nullptr);
  const double mean = 5.0 / 4;
  EXPECT_NEAR(scarcity[0], std::log(mean / ((4 + 2 * mean) / (2 + 2))), 1e-12);
  EXPECT_NEAR(scarcity[1], std::log(mean / ((1 + 2 * mean) / (1 + 2))), 1e-12);
  EXPECT_NEAR(scarcity[2], std::log(mean / ((0 + 2 * mean) / (1 + 2))), 1e-12);
  EXPECT_LT(scarcity[0], 0);
  EXPECT_GT(scarcity[2], 0);
}

// The mean over all keeps it, as backgrounds do.
TEST(FindingsHeld, ACaseLeftOutIsTakenFromItsCauseOnly) {
  const FindingsHeld held = held_of(small());
  const HeldByCase left{0, 3};
  const auto with = held.scarcity(3, nullptr), without = held.scarcity(3, &left);
  const double mean = 5.0 / 4;
  EXPECT_NEAR(without[0], std::log(mean / ((1 + 2 * mean) / (1 + 2))), 1e-12);
  EXPECT_EQ(without[1], with[1]);
  EXPECT_EQ(without[2], with[2]);
}

TEST(FindingsHeld, OfNoRecordsAndOfANewCauseNothingIsSaid) {
  EXPECT_EQ(FindingsHeld().scarcity(2, nullptr), (std::vector<double>{0, 0}));
  EXPECT_EQ(held_of(small()).scarcity(4, nullptr)[3], 0);
}

TEST(FindingsHeld, AreNotTheVehicleNorWordsNorHindsight) {
  const std::map<std::string, bool> attributes{
      {"symptom:flat", true},         {"check:leak", true},  {"condition:cold", true},
      {"code:P0299", true},           {"fact:duty", true},   {"work_sign:sealant", true},
      {"earlier_repair:x y", true},   {"make", false},       {"engine_family", false},
      {"mileage_band", false},        {"word:fobbl", false}, {"done:replace x", false},
      {"came_back:same_cause", false}};
  for (const auto& [attribute, is] : attributes) EXPECT_EQ(is_finding(attribute), is) << attribute;
}

// It may have been changed, and hold more, since the counts were taken.
TEST(FindingsHeld, ACaseThatGrewSinceLeavesNothingBelowZero) {
  const HeldByCase grown{1, 40};
  const double scarcity = held_of(small()).scarcity(3, &grown)[1];
  EXPECT_NEAR(scarcity, std::log((5.0 / 4) * 2 / (2 * 5.0 / 4)), 1e-12);
}

// Against drawing it: cases of 12 and of 4 findings, as many, asked of at any moment of the work.
// Where three findings are known, the short ones are as much likelier as scarcity says.
TEST(FindingsHeld, SayWhatAskingAtAnyMomentSays) {
  std::vector<PlainCase> cases;
  std::mt19937_64 random(20'261'126);
  std::map<std::string, int> asked_with_three;
  for (const auto& [cause, findings] : {std::pair("long:x", 12), std::pair("short:x", 4)}) {
    PlainCase one{cause, {}};
    for (int i = 0; i < findings; ++i) {
      one.items.push_back({"check:number" + std::to_string(10 + i), "pass"});
    }
    add(cases, 400, one);
    std::uniform_int_distribution<int> moment(1, findings);
    for (int i = 0; i < 100'000; ++i) asked_with_three[cause] += moment(random) == 3 ? 1 : 0;
  }
  const PlainCounter counter(std::move(cases));
  const auto scarcity = held_of(counter).scarcity(2, nullptr);
  const double drawn =
      static_cast<double>(asked_with_three["short:x"]) / asked_with_three["long:x"];
  EXPECT_NEAR(std::exp(scarcity[1] - scarcity[0]), drawn, .1);
}

}  // namespace
}  // namespace shoplore::testing
