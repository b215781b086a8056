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

// None of a's ten cases where one was to be expected is next to no evidence, however rare the
// condition. By hand: p = 3.5 / 41; a 2 / (10 + 2/p), b (3 + 2) / (30 + 2/p).
TEST(LikelyCauses, NoMentionInAFewCasesSaysLittle) {
  const EvidenceItem cold{"condition:cold", "present"};
  std::vector<PlainCase> cases(10, {"a:x", {kFlat}});
  cases.insert(cases.end(), 27, {"b:x", {kFlat}});
  cases.insert(cases.end(), 3, {"b:x", {kFlat, cold}});
  const auto ranking = rank_simply({cold}, {}, PlainCounter(std::move(cases)));
  ASSERT_TRUE(ranking);
  const RankedCause &b = ranking->causes[0], &a = ranking->causes[1];
  const double pull = 2 / (3.5 / 41);
  EXPECT_NEAR(b.why[0].weight - a.why[0].weight,
              std::log(5 / (30 + pull)) - std::log(2 / (10 + pull)), 1e-12);
  EXPECT_LT(std::exp(b.why[0].weight - a.why[0].weight), 1.6);
}

// By hand: of four cases each three of a's complaints say it, so 1.5 are expected of either; ln of
// (3 + 2) / 3.5 and of 2 / 3.5. With a second word that only b's say, twice, both are tempered by
// 1 / 1.08.
TEST(LikelyCauses, WordsSpeakByHowMuchOftenerTheyWereSaid) {
  const EvidenceItem drum{"word:drum", "present"}, hum{"word:hum", "present"};
  std::vector<PlainCase> cases(3, {"a:x", {kFlat, drum}});
  cases.push_back({"a:x", {kFlat}});
  cases.insert(cases.end(), 2, {"b:x", {kFlat, hum}});
  cases.insert(cases.end(), 2, {"b:x", {kFlat}});
  const PlainCounter shop(std::move(cases));
  const auto odds = [&](const std::vector<EvidenceItem>& items) {
    const auto ranking = rank_simply(items, {}, shop);
    EXPECT_EQ(ranking->tau, 1) << "words temper no finding";
    double of_a = 0, lines = 0;
    for (const RankedCause& row : ranking->causes) {
      const double sign = shop.causes().key(row.cause) == "a:x" ? 1 : -1;
      of_a += sign * std::log(row.probability);
      for (const WhyLine& line : row.why) lines += sign * line.weight;
    }
    EXPECT_NEAR(lines, of_a, 1e-12);
    return of_a;
  };
  const double drums = std::log((3 + 2) / 3.5) - std::log(2 / 3.5);
  const double hums = std::log(2 / 3.0) - std::log((2 + 2) / 3.0);
  EXPECT_NEAR(odds({kFlat, drum}), drums, 1e-12);
  EXPECT_NEAR(odds({kFlat, drum, hum}), (drums + hums) / 1.08, 1e-12);
}

// A typo or a name, once in very many complaints, must not point at a cause.
TEST(LikelyCauses, AWordSaidOnceSaysLittleHoweverManyTheCases) {
  for (const std::size_t size : {100U, 10'000U}) {
    std::vector<PlainCase> cases(size, {"a:x", {kFlat}});
    cases.insert(cases.end(), size, {"b:x", {kFlat}});
    cases[0].items.push_back({"word:smith", "present"});
    const auto ranking =
        rank_simply({kFlat, {"word:smith", "present"}}, {}, PlainCounter(std::move(cases)));
    EXPECT_LT(ranking->causes[0].probability / ranking->causes[1].probability, 1.6) << size;
  }
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

// Cases of a hold four findings, of b one: where one is known b is likelier by its scarcity.
TEST(LikelyCauses, ACauseWhoseCasesHoldFewFindingsGainsWhereFindingsAreKnown) {
  std::vector<PlainCase> cases(
      10, {"a:x", {kFlat, kLeak, {"symptom:sings", "present"}, {"symptom:pulls", "present"}}});
  cases.insert(cases.end(), 10, {"b:x", {kFlat}});
  const PlainCounter shop(std::move(cases));
  const auto odds_of_b = [&](const std::vector<EvidenceItem>& items, double scarcity) {
    RankingKnobs knobs;
    knobs.scarcity = scarcity;
    auto model = RankingModel::of(shop, knobs).value();
    const Ranking ranking = model.rank(items, {}).value();
    const bool is_b_first = ranking.causes[0].cause == 1;
    const RankedCause& b = ranking.causes[is_b_first ? 0 : 1];
    const RankedCause& a = ranking.causes[is_b_first ? 1 : 0];
    return std::log(b.probability / a.probability);
  };
  // By hand: R = 2.5; R_a = (40 + 5) / 12, R_b = (10 + 5) / 12.
  EXPECT_NEAR(odds_of_b({kFlat}, .5) - odds_of_b({kFlat}, 0), .5 * std::log(45.0 / 15), 1e-12);
  EXPECT_NEAR(odds_of_b({}, .5), odds_of_b({}, 0), 1e-12);
  const EvidenceItem vehicle{"make", "brackwater"};  // no finding
  EXPECT_NEAR(odds_of_b({vehicle}, .5), odds_of_b({vehicle}, 0), 1e-12);
}

}  // namespace
}  // namespace shoplore::testing
