// The ranking against arithmetic done apart from it.
#include "query/ranking/likely_causes.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

const EvidenceItem kFlat{"symptom:flat", "present"}, kNotFlat{"symptom:flat", "absent"};
const EvidenceItem kLeak{"check:leak", "fail"}, kTight{"check:leak", "pass"};

// a: 4 cases, b: 2, c: 1.
PlainCounter small() {
  return PlainCounter({{"a:x", {kFlat, kLeak}},
                       {"a:x", {kFlat, kLeak}},
                       {"a:x", {kFlat}},
                       {"a:x", {kNotFlat, kTight}},
                       {"b:x", {kFlat, kTight}},
                       {"b:x", {kTight}},
                       {"c:x", {kNotFlat}}});
}

TEST(LikelyCauses, EqualTheWorkedExample) {
  // By hand, m = 2. flat: known in 6, present in 4, two values: p = 4.5 / 7.
  //   theta a = (3 + 2p)/(4 + 2), b = (1 + 2p)/(1 + 2), c = (0 + 2p)/(1 + 2)
  // leak = fail: known in 5, 2 with it, four values: p = 2.5 / 7.
  //   theta a = (2 + 2p)/(3 + 2), b = (0 + 2p)/(2 + 2), c = (0 + 2p)/(0 + 2) = p
  // Two items: tau = 1 / 1.03. One cause seen once of 7 cases: unseen weight 1/7.
  const double p1 = 4.5 / 7, p2 = 2.5 / 7, tau = 1 / 1.03;
  const double a = std::log((3 + 2 * p1) / 6 / p1) + std::log((2 + 2 * p2) / 5 / p2);
  const double b = std::log((1 + 2 * p1) / 3 / p1) + std::log((2 * p2) / 4 / p2);
  const double c = std::log((2 * p1) / 3 / p1);
  const double share = (1 - 1.0 / 7) / (4.5 + 2.5 + 1.5);
  const double wa = share * 4.5 * std::exp(tau * a), wb = share * 2.5 * std::exp(tau * b);
  const double wc = share * 1.5 * std::exp(tau * c), unseen = 1.0 / 7;
  const double sum = wa + wb + wc + unseen;

  const auto ranking = rank_simply({kFlat, kLeak}, {}, small());
  ASSERT_TRUE(ranking);
  ASSERT_EQ(ranking->causes.size(), 3U);
  EXPECT_NEAR(ranking->tau, tau, 1e-15);
  EXPECT_NEAR(ranking->causes[0].probability, wa / sum, 1e-12);
  EXPECT_EQ(ranking->causes[0].seen, 4U);
  const std::map<CauseNumber, double> others{{1, wb / sum}, {2, wc / sum}};
  for (std::size_t i = 1; i < 3; ++i) {
    EXPECT_NEAR(ranking->causes[i].probability, others.at(ranking->causes[i].cause), 1e-12);
  }
  EXPECT_NEAR(ranking->not_in_these_records, unseen / sum, 1e-12);
}

TEST(LikelyCauses, WithoutEvidenceThePriorSpeaks) {
  const auto ranking = rank_simply({}, {}, small());
  ASSERT_TRUE(ranking);
  EXPECT_NEAR(ranking->causes[0].probability, (1 - 1.0 / 7) * 4.5 / 8.5, 1e-12);
  EXPECT_NEAR(ranking->not_in_these_records, 1.0 / 7, 1e-12);
}

// The case goes out of every count by cause; the background keeps it.
TEST(LikelyCauses, ACaseLeftOutIsTakenFromItsCause) {
  const LeftOut own{CaseId{1}, 0, {kFlat, kLeak}, {"symptom:flat", "check:leak"}};
  const auto ranking = rank_simply({kFlat, kLeak}, {}, small(), own);
  ASSERT_TRUE(ranking);
  const double p1 = 4.5 / 7, p2 = 2.5 / 7, tau = 1 / 1.03;
  const double a = std::log((2 + 2 * p1) / 5 / p1) + std::log((1 + 2 * p2) / 4 / p2);
  const double b = std::log((1 + 2 * p1) / 3 / p1) + std::log((2 * p2) / 4 / p2);
  const RankedCause& first = ranking->causes[0];
  EXPECT_EQ(first.cause, 0U);
  EXPECT_EQ(first.seen, 3U);
  for (const RankedCause& row : ranking->causes) {
    if (row.cause != 1) continue;
    const double odds = std::log(3.5 / 2.5) + tau * (a - b);
    EXPECT_NEAR(std::log(first.probability / row.probability), odds, 1e-12);
  }
}

// Not even where causes have looked unequally often, and not by counting as one more item.
TEST(LikelyCauses, AnItemNoCaseHoldsMovesNothingAndIsNamed) {
  for (const EvidenceItem& never :
       {EvidenceItem{"symptom:sings", "present"}, EvidenceItem{"condition:uphill", "present"},
        EvidenceItem{"check:leak", "unclear"}}) {
    const auto with = rank_simply({kFlat, never}, {}, small());
    const auto without = rank_simply({kFlat}, {}, small());
    ASSERT_TRUE(with && without);
    EXPECT_EQ(with->never_seen, std::vector<EvidenceItem>{never});
    EXPECT_EQ(with->causes[0].why.size(), 1U);
    for (std::size_t i = 0; i < 3; ++i) {
      EXPECT_NEAR(with->causes[i].probability, without->causes[i].probability, 1e-12);
    }
  }
}

// Of the only case that holds an item nothing is left once it is left out.
TEST(LikelyCauses, AnItemOnlyTheLeftOutCaseHoldsMovesNothing) {
  const PlainCounter shop({{"a:x", {kFlat, kLeak}}, {"a:x", {kFlat}}, {"b:x", {kFlat}}});
  const LeftOut own{CaseId{1}, 0, {kFlat, kLeak}, {"symptom:flat", "check:leak"}};
  const auto ranking = rank_simply({kFlat, kLeak}, {}, shop, own);
  ASSERT_TRUE(ranking);
  EXPECT_EQ(ranking->never_seen, std::vector<EvidenceItem>{kLeak});
  EXPECT_NEAR(ranking->causes[0].probability, ranking->causes[1].probability, 1e-12);
}

// Ten cases of a name the symptom, none of b names it at all: nobody denied it there, yet it speaks
// for a. By hand, m = 2: named in 10 of 20, r = 10.5 / 21; a (10 + 2r)/(10 + 2), b 2r/(10 + 2).
TEST(LikelyCauses, ASymptomACausesCasesDoNotNameSpeaksAgainstIt) {
  std::vector<PlainCase> cases(10, {"a:x", {kFlat}});
  cases.insert(cases.end(), 10, {"b:x", {kTight}});
  const PlainCounter shop(std::move(cases));
  const auto odds = [&](const EvidenceItem& item) {
    const auto ranking = rank_simply({item}, {}, shop, {}, 1);
    return std::log(ranking->causes[0].probability / ranking->causes[1].probability);
  };
  const double p = 10.5 / 11, by_those_who_looked = std::log((10 + 2 * p) / 12 / p);
  EXPECT_NEAR(odds(kFlat), std::log((10 + 2 * .5) / (2 * .5)) + by_those_who_looked, 1e-12);
  // Somebody chose that check: that it was done says nothing.
  const double q = 10.5 / 12;
  EXPECT_NEAR(odds(kTight), std::log((10 + 2 * q) / 12 / q), 1e-12);
}

// By hand, with m = 32 for the rates and m = 2 for the strength. Four cases each, the word in three
// of a's: p = 3.5/9; U = I / H with theta a (3 + 2p)/6 and b 2p/6, each half of the cases, and
// without the word (1 + 2q)/6, (4 + 2q)/6, q = 5.5/9.
TEST(LikelyCauses, AWordSpeaksByItsOwnStrength) {
  const EvidenceItem drum{"word:drum", "present"};
  std::vector<PlainCase> cases(3, {"a:x", {kFlat, drum}});
  cases.push_back({"a:x", {kFlat}});
  cases.insert(cases.end(), 4, {"b:x", {kFlat}});
  const PlainCounter shop(std::move(cases));
  const double p = 3.5 / 9, q = 5.5 / 9;
  double information = 0;
  for (const auto& [rate, usual] : {std::pair{(3 + 2 * p) / 6, p},
                                    {2 * p / 6, p},
                                    {(1 + 2 * q) / 6, q},
                                    {(4 + 2 * q) / 6, q}}) {
    information += .5 * rate * std::log(rate / usual);
  }
  const double strength = std::sqrt(information / (-p * std::log(p) - q * std::log(q)));
  const double odds = strength * std::log((3 + 32 * p) / (32 * p));
  const auto ranking = rank_simply({kFlat, drum}, {}, shop);
  ASSERT_TRUE(ranking);
  const RankedCause &a = ranking->causes[0], &b = ranking->causes[1];
  EXPECT_NEAR(std::log(a.probability / b.probability), odds, 1e-12);
  EXPECT_NEAR(a.why[1].weight - b.why[1].weight, odds, 1e-12);
  // Words that go together are tempered as words, and do not temper the findings.
  EXPECT_EQ(ranking->tau, 1);
}

// What a technician reads beside it is of all cases, since a record names what is there.
TEST(LikelyCauses, ASymptomThatIsThereIsCountedAmongAllCases) {
  const auto ranking = rank_simply({kFlat, kLeak}, {}, small());
  ASSERT_TRUE(ranking);
  const auto counts = [&](std::size_t i) {
    const WhyLine& line = ranking->causes[0].why[i];
    return std::array{line.with_item, line.known, line.with_item_elsewhere, line.known_elsewhere};
  };
  EXPECT_EQ(counts(0), (std::array{3U, 4U, 1U, 3U}));  // flat
  EXPECT_EQ(counts(1), (std::array{2U, 3U, 0U, 2U}));  // leak: of those that looked
}

TEST(RankingItems, OfTheVehicleOnlyTheMostTellingStays) {
  const std::vector<EvidenceItem> stated{{"engine_family", "bw16d"}, {"fuel", "diesel"},
                                         {"make", "brackwater"},     {"mileage_band", "100"},
                                         {"model", "tidal"},         kFlat};
  EXPECT_EQ(
      ranking_items(stated),
      (std::vector<EvidenceItem>{{"engine_family", "bw16d"}, {"mileage_band", "100"}, kFlat}));
  EXPECT_EQ(ranking_items({{"fuel", "diesel"}, {"make", "brackwater"}}).size(), 2U);
}

}  // namespace
}  // namespace shoplore::testing
