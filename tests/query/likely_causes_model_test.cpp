// The ranking against the same formula written plainly, as products over a list of cases, and
// the claims that hold for any records.
#include <gtest/gtest.h>

#include <cmath>
#include <iostream>
#include <map>
#include <numeric>
#include <random>

#include "query/ranking/likely_causes.hpp"
#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'260'418;

// One attribute of every way of being known, with the number of values the model gives it.
struct Feature {
  EvidenceItem item;
  double values = 2;
};
const std::vector<Feature> kFeatures{
    {{"symptom:flat", "present"}, 2},   {{"symptom:whistle", "absent"}, 2},
    {{"check:linkage", "fail"}, 4},     {{"code:P0299", "present"}, 2},
    {{"code:P0301", "absent"}, 2},      {{"earlier_repair:replace coil", "present"}, 2},
    {{"condition:cold", "present"}, 2}, {{"engine_family", "bw16d"}, 3}};

PlainCase random_case(std::mt19937_64& random, int causes) {
  const auto one_in = [&](std::uint64_t n) { return random() % n == 0; };
  const auto pick = [&](std::initializer_list<const char*> values) {
    return std::string(*(values.begin() + random() % values.size()));
  };
  // Skewed, so that some causes are seen once.
  const auto cause = std::min(random() % static_cast<std::uint64_t>(causes),
                              random() % static_cast<std::uint64_t>(causes));
  PlainCase drawn{"part" + std::to_string(cause) + ":worn", {}};
  for (const char* symptom : {"symptom:flat", "symptom:whistle"}) {
    if (!one_in(3)) drawn.items.push_back({symptom, pick({"present", "absent"})});
  }
  if (!one_in(3)) drawn.items.push_back({"check:linkage", pick({"pass", "fail", "unclear"})});
  if (!one_in(3)) {
    drawn.groups.insert("scanned");
    if (one_in(2)) drawn.items.push_back({"code:P0299", "present"});
    if (one_in(2)) drawn.items.push_back({"code:P0301", "present"});
  }
  if (one_in(2)) {
    drawn.groups.insert("earlier_repairs");
    if (one_in(2)) drawn.items.push_back({"earlier_repair:replace coil", "present"});
  }
  if (one_in(3)) drawn.items.push_back({"condition:cold", "present"});
  if (!one_in(3)) drawn.items.push_back({"engine_family", pick({"bw16d", "cm14p", "ar20e"})});
  drawn.items.push_back({"make", pick({"brackwater", "cormont"})});
  return drawn;
}

// Three families always, so that the number of values is known without asking the counter.
PlainCounter random_shop(std::mt19937_64& random) {
  std::vector<PlainCase> cases;
  for (const char* family : {"bw16d", "cm14p", "ar20e"}) {
    cases.push_back({"part0:worn", {{"engine_family", family}, {"make", "cormont"}}});
  }
  const auto size = static_cast<int>(1 + random() % 120);
  for (int i = 0; i < size; ++i) cases.push_back(random_case(random, 8));
  return PlainCounter(std::move(cases));
}

std::vector<Feature> random_features(std::mt19937_64& random) {
  std::vector<Feature> features;
  for (const Feature& feature : kFeatures) {
    if (random() % 2 == 0) features.push_back(feature);
  }
  return features;
}

std::vector<EvidenceItem> items_of(const std::vector<Feature>& features) {
  std::vector<EvidenceItem> items;
  for (const Feature& feature : features) items.push_back(feature.item);
  return items;
}

struct PlainRanking {
  std::map<std::string, double> probability;
  double unseen = 0;
};

// Directly from the definition; every count is a loop over the cases.
// Backgrounds are of `all`, which a case left out still belongs to. What no case holds is no
// evidence.
PlainRanking rank_plainly(std::vector<Feature> features, const std::vector<PlainCase>& cases,
                          const std::vector<PlainCase>& all, double listing = 0) {
  std::erase_if(features, [&](const Feature& feature) {
    return std::none_of(cases.begin(), cases.end(),
                        [&](const PlainCase& each) { return states(each, feature.item); });
  });
  std::map<std::string, double> seen;
  for (const PlainCase& each : cases) seen[each.cause] += 1;
  const auto total = static_cast<double>(cases.size());
  double once = 0, prior_total = 0;
  for (const auto& [cause, count] : seen) {
    if (count == 1) once += 1;
    prior_total += count + 0.5;
  }
  const double unseen = once / total;
  const double tau = 1 / (1 + 0.03 * (std::max(static_cast<double>(features.size()), 1.0) - 1));
  PlainRanking ranking{{}, unseen};
  double sum = 0;
  for (const auto& [cause, count] : seen) {
    double weight = (1 - unseen) * (count + 0.5) / prior_total;
    for (const Feature& feature : features) {
      double with = 0, known = 0, with_here = 0, known_here = 0, named = 0;
      for (const PlainCase& each : all) {
        with += states(each, feature.item) ? 1 : 0;
        known += knows(each, feature.item.attribute) ? 1 : 0;
      }
      for (const PlainCase& each : cases) {
        named += knows(each, feature.item.attribute) ? 1 : 0;
        if (each.cause != cause) continue;
        with_here += states(each, feature.item) ? 1 : 0;
        known_here += knows(each, feature.item.attribute) ? 1 : 0;
      }
      const double background = (with + 0.5) / (known + feature.values / 2);
      const double m = feature.item.attribute == "condition:cold" ? 2 / background : 2;
      weight *= std::pow((with_here + m * background) / (known_here + m) / background, tau);
      if (feature.item.attribute != "symptom:flat") continue;
      const double usual = (named + 0.5) / (total + 1);
      const double named_pull = std::max(2.0, 1 / usual);
      weight *=
          std::pow((known_here + named_pull * usual) / (count + named_pull) / usual, tau * listing);
    }
    ranking.probability[cause] = weight;
    sum += weight;
  }
  // Evidence that no recorded cause explains speaks for no other either.
  ranking.unseen = unseen * std::min(1.0, sum / (1 - unseen));
  sum += ranking.unseen;
  for (auto& [cause, weight] : ranking.probability) weight /= sum;
  ranking.unseen /= sum;
  return ranking;
}

class LikelyCausesModel : public ::testing::Test {
 protected:
  void SetUp() override { std::cout << "seed " << kSeed << "\n"; }
  std::mt19937_64 random_{kSeed};
};

TEST_F(LikelyCausesModel, EqualsTheDefinitionWrittenPlainly) {
  for (int round = 0; round < 300; ++round) {
    const double listing = round % 2 == 0 ? 0 : .75;
    const PlainCounter shop = random_shop(random_);
    const auto features = random_features(random_);
    const auto expected = rank_plainly(features, shop.plain(), shop.plain(), listing);
    const auto ranking = rank_simply(items_of(features), {}, shop, {}, listing);
    ASSERT_TRUE(ranking);
    ASSERT_EQ(ranking->causes.size(), expected.probability.size()) << round;
    for (const RankedCause& row : ranking->causes) {
      ASSERT_NEAR(row.probability, expected.probability.at(shop.causes().key(row.cause)), 1e-12)
          << round;
    }
    ASSERT_NEAR(ranking->not_in_these_records, expected.unseen, 1e-12) << round;
  }
}

TEST_F(LikelyCausesModel, ProbabilitiesAddToOneAndFall) {
  for (int round = 0; round < 300; ++round) {
    const PlainCounter shop = random_shop(random_);
    const auto ranking = rank_simply(items_of(random_features(random_)), {}, shop);
    ASSERT_TRUE(ranking);
    double sum = ranking->not_in_these_records;
    for (const RankedCause& row : ranking->causes) sum += row.probability;
    ASSERT_NEAR(sum, 1, 1e-12) << round;
    for (std::size_t i = 1; i < ranking->causes.size(); ++i) {
      ASSERT_GE(ranking->causes[i - 1].probability, ranking->causes[i].probability) << round;
    }
  }
}

// What the lines add up to is what moved two causes apart beyond how often they were seen.
TEST_F(LikelyCausesModel, WhyLinesAddUpToTheLogOdds) {
  for (int round = 0; round < 300; ++round) {
    const PlainCounter shop = random_shop(random_);
    const auto ranking = rank_simply(items_of(random_features(random_)), {}, shop);
    ASSERT_TRUE(ranking);
    const auto sum_of = [](const RankedCause& row) {
      return std::accumulate(row.why.begin(), row.why.end(), 0.0,
                             [](double sum, const WhyLine& line) { return sum + line.weight; });
    };
    const RankedCause& first = ranking->causes.front();
    for (const RankedCause& row : ranking->causes) {
      const double odds = std::log(row.probability / first.probability);
      const double prior = std::log((row.seen + 0.5) / (first.seen + 0.5));
      ASSERT_NEAR(odds, prior + sum_of(row) - sum_of(first), 1e-9) << round;
    }
  }
}

TEST_F(LikelyCausesModel, TheOrderOfTheItemsDoesNotMatter) {
  for (int round = 0; round < 100; ++round) {
    const PlainCounter shop = random_shop(random_);
    auto items = items_of(random_features(random_));
    const auto forwards = rank_simply(items, {}, shop);
    std::reverse(items.begin(), items.end());
    const auto backwards = rank_simply(items, {}, shop);
    ASSERT_TRUE(forwards && backwards);
    for (std::size_t i = 0; i < forwards->causes.size(); ++i) {
      ASSERT_NEAR(forwards->causes[i].probability, backwards->causes[i].probability, 1e-12);
    }
  }
}

// Also where the case left out was the only one of its cause.
TEST_F(LikelyCausesModel, LeavingACaseOutTakesItFromEveryCountByCause) {
  for (int round = 0; round < 200; ++round) {
    const PlainCounter shop = random_shop(random_);
    // The first three keep the number of engine families as it is.
    const std::size_t own = 3 + random_() % (shop.plain().size() - 3);
    const PlainCase& left = shop.plain()[own];
    LeftOut left_out{CaseId{static_cast<std::uint32_t>(own) + 1},
                     *shop.causes().find(left.cause),
                     left.items,
                     {}};
    left_out.known.assign(left.groups.begin(), left.groups.end());
    for (const EvidenceItem& item : left.items) left_out.known.push_back(item.attribute);
    auto others = shop.plain();
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(own));
    const auto features = random_features(random_);
    const auto expected = rank_plainly(features, others, shop.plain(), .75);
    const auto ranking = rank_simply(items_of(features), {}, shop, left_out, .75);
    ASSERT_TRUE(ranking);
    ASSERT_EQ(ranking->causes.size(), expected.probability.size()) << round;
    for (const RankedCause& row : ranking->causes) {
      ASSERT_NEAR(row.probability, expected.probability.at(shop.causes().key(row.cause)), 1e-12)
          << round;
    }
  }
}

TEST_F(LikelyCausesModel, AFilterEqualsHavingOnlyThoseCases) {
  for (int round = 0; round < 100; ++round) {
    const PlainCounter shop = random_shop(random_);
    std::vector<PlainCase> cormonts;
    for (const PlainCase& each : shop.plain()) {
      if (states(each, {"make", "cormont"})) cormonts.push_back(each);
    }
    Filter filter;
    filter.make = "cormont";
    const auto features = random_features(random_);
    const auto ranking = rank_simply(items_of(features), filter, shop, {}, .75);
    ASSERT_TRUE(ranking);
    ASSERT_EQ(ranking->cases, cormonts.size());
    const auto expected = rank_plainly(features, cormonts, cormonts, .75);
    for (const RankedCause& row : ranking->causes) {
      ASSERT_NEAR(row.probability, expected.probability.at(shop.causes().key(row.cause)), 1e-12);
    }
  }
}

// The share of causes seen once would leave nothing for those that are recorded.
TEST(LikelyCauses, WhereEveryCauseWasSeenOnceEvidenceStillDecides) {
  const PlainCounter shop({{"a:x", {{"symptom:flat", "absent"}}},
                           {"b:x", {{"symptom:flat", "absent"}}},
                           {"c:x", {{"symptom:flat", "present"}}}});
  const auto ranking = rank_simply({{"symptom:flat", "present"}}, {}, shop);
  ASSERT_TRUE(ranking);
  EXPECT_EQ(shop.causes().key(ranking->causes.front().cause), "c:x");
  EXPECT_GT(ranking->causes.front().probability, ranking->causes.back().probability);
  EXPECT_GT(ranking->not_in_these_records, 0.5);
}

TEST(LikelyCauses, WithoutAnyCaseNothingIsRanked) {
  const auto ranking = rank_simply({{"symptom:flat", "present"}}, {}, PlainCounter({}));
  ASSERT_TRUE(ranking);
  EXPECT_TRUE(ranking->causes.empty());
  EXPECT_EQ(ranking->cases, 0U);
}

}  // namespace
}  // namespace shoplore::testing
