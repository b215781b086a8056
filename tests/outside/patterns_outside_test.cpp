// Mining, exact tests and many tests at once against published examples.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "query/patterns/association.hpp"
#include "query/patterns/exact_tests.hpp"
#include "query/patterns/false_discovery.hpp"
#include "query/patterns/set_counts.hpp"

namespace shoplore {
namespace {

// Lists of things, and the counts of all sets of up to three of them.
class Baskets {
 public:
  explicit Baskets(const std::vector<std::set<std::string>>& baskets, std::uint32_t fewest) {
    std::map<std::string, std::vector<std::uint32_t>> columns;
    std::vector<std::uint32_t> all;
    for (std::uint32_t row = 0; row < baskets.size(); ++row) {
      for (const std::string& thing : baskets[row]) columns[thing].push_back(row);
      all.push_back(row);
    }
    std::vector<std::vector<std::uint32_t>> lists;
    for (const auto& [thing, rows] : columns) {
      names_.push_back(thing);
      lists.push_back(rows);
    }
    const NumberRows rows(lists, baskets.size());
    baskets_ = static_cast<std::uint32_t>(baskets.size());
    for_each_set(rows, rows, all, fewest, [&](const SetCount& set) {
      std::set<std::string> things;
      for (const std::uint32_t number : set.set) things.insert(names_[number]);
      counts_[things] = set.rows;
      with_[things].assign(set.by_outcome.begin(), set.by_outcome.end());
    });
  }

  [[nodiscard]] const std::map<std::set<std::string>, std::uint32_t>& frequent() const {
    return counts_;
  }

  [[nodiscard]] Association rule(const std::set<std::string>& left,
                                 const std::string& right) const {
    const auto number =
        static_cast<std::size_t>(std::find(names_.begin(), names_.end(), right) - names_.begin());
    const std::uint32_t both = with_.at(left)[number], set = counts_.at(left);
    const std::uint32_t with = counts_.at({right});
    return association_of({both, set - both, with - both, baskets_ - set - with + both});
  }

 private:
  std::vector<std::string> names_;
  std::map<std::set<std::string>, std::uint32_t> counts_;
  std::map<std::set<std::string>, std::vector<std::uint32_t>> with_;
  std::uint32_t baskets_ = 0;
};

double share(const Association& association) {
  return static_cast<double>(association.confidence.count) / association.confidence.out_of;
}

// Tan, Steinbach & Kumar, Introduction to Data Mining, Table 6.1: five market baskets. {Milk,
// Diapers} -> {Beer}: support 0.4 and confidence 0.67 as printed; the rest follows from the table.
const std::vector<std::set<std::string>> kMarket{{"Bread", "Milk"},
                                                 {"Bread", "Diapers", "Beer", "Eggs"},
                                                 {"Milk", "Diapers", "Beer", "Cola"},
                                                 {"Bread", "Milk", "Diapers", "Beer"},
                                                 {"Bread", "Milk", "Diapers", "Cola"}};

TEST(PatternsOutside, RulesOfTheMarketBaskets) {
  const Baskets market(kMarket, 1);
  const struct {
    std::set<std::string> left;
    const char* right;
    double support, confidence, lift;
  } rows[] = {{{"Milk", "Diapers"}, "Beer", 2.0 / 5, 2.0 / 3, 10.0 / 9},
              {{"Diapers"}, "Beer", 3.0 / 5, 3.0 / 4, 5.0 / 4},
              {{"Beer"}, "Diapers", 3.0 / 5, 1, 1.25},
              {{"Milk", "Beer"}, "Diapers", 2.0 / 5, 1, 1.25},
              {{"Diapers", "Beer"}, "Milk", 2.0 / 5, 2.0 / 3, 5.0 / 6},
              {{"Bread"}, "Milk", 3.0 / 5, 3.0 / 4, 0.9375}};
  for (const auto& row : rows) {
    const Association rule = market.rule(row.left, row.right);
    EXPECT_NEAR(rule.support, row.support, 1e-12) << row.right;
    EXPECT_NEAR(share(rule), row.confidence, 1e-12) << row.right;
    EXPECT_NEAR(rule.lift, row.lift, 1e-12) << row.right;
  }
}

TEST(PatternsOutside, EightFrequentSetsOfTheMarketBaskets) {
  const std::map<std::set<std::string>, std::uint32_t> expected{
      {{"Bread"}, 4},         {{"Diapers"}, 4},         {{"Milk"}, 4},
      {{"Beer"}, 3},          {{"Beer", "Diapers"}, 3}, {{"Bread", "Diapers"}, 3},
      {{"Bread", "Milk"}, 3}, {{"Diapers", "Milk"}, 3}};
  EXPECT_EQ(Baskets(kMarket, 3).frequent(), expected);
}

// Tea and coffee, the usual example of a rule that is held often and says nothing (Tan, Steinbach &
// Kumar, ch. 6): 150 take both, 50 tea only, 650 coffee only, 150 neither.
TEST(PatternsOutside, TeaDrinkersTakeCoffeeOftenAndLessThanOthers) {
  const Association rule = association_of({150, 50, 650, 150});
  EXPECT_NEAR(rule.support, 0.15, 1e-12);
  EXPECT_NEAR(share(rule), 0.75, 1e-12);
  EXPECT_NEAR(rule.lift, 0.9375, 1e-12);
  EXPECT_NEAR(association_of({15, 5, 75, 5}).lift, 0.8333333, 1e-7);
}

// Han, Pei & Yin, SIGMOD 2000, Table 1, least count 3: 18 frequent sets, of which facm has four
// members and is none of ours.
TEST(PatternsOutside, SeventeenFrequentSetsOfTheFpGrowthTransactions) {
  const Baskets transactions({{"f", "a", "c", "d", "g", "i", "m", "p"},
                              {"a", "b", "c", "f", "l", "m", "o"},
                              {"b", "f", "h", "j", "o"},
                              {"b", "c", "k", "s", "p"},
                              {"a", "f", "c", "e", "l", "p", "m", "n"}},
                             3);
  std::map<std::string, std::uint32_t> found;
  for (const auto& [things, count] : transactions.frequent()) {
    std::string name;
    for (const std::string& thing : things) name += thing;
    found[name] = count;
  }
  const std::map<std::string, std::uint32_t> expected{
      {"a", 3},  {"b", 3},   {"c", 4},   {"f", 4},   {"m", 3},  {"p", 3},
      {"ac", 3}, {"af", 3},  {"am", 3},  {"cf", 3},  {"cm", 3}, {"cp", 3},
      {"fm", 3}, {"acf", 3}, {"acm", 3}, {"afm", 3}, {"cfm", 3}};
  EXPECT_EQ(found, expected);
}

// R 4.2.2, help page of fisher.test, after Agresti (Categorical Data Analysis, 1990, p. 61):
// Fisher's lady tasting tea. One-sided 17/70; all eight cups right 1/70.
TEST(PatternsOutside, TheLadyTastingTea) {
  const ExactTests exact(8);
  EXPECT_NEAR(exact.fisher_more({3, 1, 1, 3}), 17.0 / 70, 1e-12);
  EXPECT_NEAR(exact.fisher_more({4, 0, 0, 4}), 1.0 / 70, 1e-12);
}

// The same page: Fisher's convicts and their twins (Fisher 1962), rows dizygotic 2 and 15,
// monozygotic 10 and 3: fewer convicted p = 0.0004652. Fewer is more of the other column.
TEST(PatternsOutside, ConvictedTwins) {
  EXPECT_NEAR(ExactTests(30).fisher_more({15, 2, 3, 10}), 0.000465180944, 1e-12);
}

// Benjamini & Hochberg, J R Statist Soc B 57 (1995), sec. 4: fifteen ordered p-values.
const std::vector<double> kThrombolysis{0.0001, 0.0004, 0.0019, 0.0095, 0.0201,
                                        0.0278, 0.0298, 0.0344, 0.0459, 0.3240,
                                        0.4262, 0.5719, 0.6528, 0.7590, 1.0000};

std::ptrdiff_t rejected(const std::vector<double>& adjusted) {
  return std::count_if(adjusted.begin(), adjusted.end(), [](double p) { return p <= 0.05; });
}

TEST(PatternsOutside, FourRejectedByBenjaminiAndHochberg) {
  const auto q = benjamini_hochberg(kThrombolysis, 15);
  EXPECT_EQ(rejected(q), 4);  // printed
  // Adjusted values: statsmodels 0.13.5 on the same p-values.
  const std::vector<double> expected{0.0015,    0.003,     0.0095,    0.035625,  0.0603,
                                     0.0638571, 0.0638571, 0.0645,    0.0765,    0.486,
                                     0.5811818, 0.714875,  0.7532308, 0.8132143, 1};
  for (std::size_t i = 0; i < q.size(); ++i) EXPECT_NEAR(q[i], expected[i], 1e-6) << i;
}

// Holm on the same p-values: statsmodels 0.13.5.
TEST(PatternsOutside, ThreeRejectedByHolm) {
  const auto adjusted = holm(kThrombolysis, 15);
  EXPECT_EQ(rejected(adjusted), 3);
  const std::vector<double> expected{0.0015, 0.0056, 0.0247, 0.114,  0.2211,
                                     0.278,  0.278,  0.278,  0.3213, 1};
  for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(adjusted[i], expected[i], 1e-9);
}

// The first four p-values with the number of tests give what the whole list gives.
TEST(PatternsOutside, OnlyTheNumberOfTheOthersMatters) {
  const std::vector<double> few(kThrombolysis.begin(), kThrombolysis.begin() + 4);
  EXPECT_EQ(rejected(benjamini_hochberg(few, 15)), 4);
  EXPECT_EQ(rejected(holm(few, 15)), 3);
}

}  // namespace
}  // namespace shoplore
