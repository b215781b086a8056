// The ranking against arithmetic done apart from it.
#include "query/likely_causes.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace shoplore {
namespace {

// Cases given outright; counts them one by one.
class PlainCounter final : public CaseCounter {
 public:
  struct Row {
    std::string cause;
    std::vector<EvidenceItem> items;  // self-known attributes only
  };
  explicit PlainCounter(std::vector<Row> rows) : rows_(std::move(rows)) {
    for (const Row& row : rows_) causes_.number(row.cause);
  }
  Result<Tally> tally(const CountQuestion&) const override { return Tally{}; }
  Result<std::vector<std::uint32_t>> by_cause(const CountQuestion& question) const override {
    return count([&](const Row& row) {
      for (const EvidenceItem& item : question.all_of) {
        if (std::find(row.items.begin(), row.items.end(), item) == row.items.end()) return false;
      }
      return true;
    });
  }
  Result<std::vector<std::uint32_t>> known_by_cause(std::string_view attribute,
                                                    const Filter&) const override {
    return count([&](const Row& row) {
      for (const EvidenceItem& item : row.items) {
        if (item.attribute == attribute) return true;
      }
      return false;
    });
  }
  Result<std::uint32_t> value_count(std::string_view) const override { return 2; }
  const CauseTable& causes() const override { return causes_; }

 private:
  template <class Holds>
  std::vector<std::uint32_t> count(Holds holds) const {
    std::vector<std::uint32_t> counts(causes_.size());
    for (const Row& row : rows_) counts[*causes_.find(row.cause)] += holds(row) ? 1U : 0U;
    return counts;
  }
  std::vector<Row> rows_;
  CauseTable causes_;
};

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

  const auto ranking = rank_causes({kFlat, kLeak}, {}, small());
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
  const auto ranking = rank_causes({}, {}, small());
  ASSERT_TRUE(ranking);
  EXPECT_NEAR(ranking->causes[0].probability, (1 - 1.0 / 7) * 4.5 / 8.5, 1e-12);
  EXPECT_NEAR(ranking->not_in_these_records, 1.0 / 7, 1e-12);
}

TEST(LikelyCauses, LeavingACaseOutEqualsNeverHavingHadIt) {
  const LeftOut own{0, {kFlat, kLeak}, {"symptom:flat", "check:leak"}};
  const auto left_out = rank_causes({kFlat, kLeak}, {}, small(), {}, own);
  const auto never = rank_causes({kFlat, kLeak}, {},
                                 PlainCounter({{"a:x", {kFlat, kLeak}},
                                               {"a:x", {kFlat}},
                                               {"a:x", {kNotFlat, kTight}},
                                               {"b:x", {kFlat, kTight}},
                                               {"b:x", {kTight}},
                                               {"c:x", {kNotFlat}}}));
  ASSERT_TRUE(left_out && never);
  ASSERT_EQ(left_out->causes.size(), never->causes.size());
  for (std::size_t i = 0; i < never->causes.size(); ++i) {
    EXPECT_EQ(left_out->causes[i].cause, never->causes[i].cause);
    EXPECT_NEAR(left_out->causes[i].probability, never->causes[i].probability, 1e-12);
  }
}

TEST(LikelyCauses, AnItemNeverSeenMovesNothing) {
  const auto with = rank_causes({{"symptom:sings", "present"}}, {}, small());
  const auto without = rank_causes({}, {}, small());
  ASSERT_TRUE(with && without);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(with->causes[i].probability, without->causes[i].probability, 1e-12);
  }
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
}  // namespace shoplore
