// Every closed case of the demo asked as if it were new, against the best anybody could do who
// knew the true rates.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>

#include "corpus-demo/truth.hpp"
#include "indexer/case_keys.hpp"
#include "query/ranking/likely_causes.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

Ranking ask_again(const DemoShop& shop, const Case& record, CaseId id) {
  const Vocabulary& vocabulary = shop.vocabulary();
  const Ledger& ledger = shop.ledger();
  const auto evidence = evidence_of(record, vocabulary);
  LeftOut own{id, *ledger.causes().find(cause_key(*record.cause, vocabulary)), evidence,
              known_in(record, vocabulary)};
  return shop.snapshot().ranking().rank(ranking_items(evidence), {}, own).value();
}

struct Hits {
  int first = 0, first_three = 0;
};

TEST(LeaveOneOut, OnTheDemoIsNearTheBestPossible) {
  const DemoShop shop;
  ASSERT_EQ(shop.closed().size(), 2'400U);
  Hits ours, best;
  for (const auto& [id, drawn] : shop.closed()) {
    const Ranking ranking = ask_again(shop, drawn.record, id);
    const std::string truth = cause_key(*drawn.record.cause, shop.vocabulary());
    for (std::size_t i = 0; i < std::min<std::size_t>(3, ranking.causes.size()); ++i) {
      if (shop.ledger().causes().key(ranking.causes[i].cause) != truth) continue;
      ours.first += i == 0 ? 1 : 0;
      ++ours.first_three;
    }
    const auto posterior = true_posterior(shop.world(), drawn.record);
    const double own = posterior[*drawn.pattern];
    const auto better = std::count_if(posterior.begin(), posterior.end(),
                                      [&](double other) { return other > own; });
    best.first += better == 0 ? 1 : 0;
    best.first_three += better < 3 ? 1 : 0;
  }
  const double n = static_cast<double>(shop.closed().size());
  std::cout << fmt::format(
      "first: ours {:.4f}, best possible {:.4f}; first three: {:.4f}, {:.4f}\n", ours.first / n,
      best.first / n, ours.first_three / n, best.first_three / n);
  EXPECT_GE(best.first / n, .80) << "a demo that is too hard proves nothing";
  EXPECT_LE(best.first / n, .92) << "a demo that is too easy proves nothing";
  EXPECT_NEAR(ours.first / n, best.first / n, .03);
  EXPECT_NEAR(ours.first_three / n, best.first_three / n, .02);
}

TEST(LeaveOneOut, ProbabilitiesAddUpAndWhyExplainsThem) {
  const DemoShop shop;
  for (std::size_t i = 0; i < shop.closed().size(); i += 40) {
    const Ranking ranking = ask_again(shop, shop.closed()[i].drawn.record, shop.closed()[i].id);
    double sum = ranking.not_in_these_records;
    for (const RankedCause& row : ranking.causes) sum += row.probability;
    EXPECT_NEAR(sum, 1, 1e-12);
    // Every row's parts add up to its log-odds.
    for (const RankedCause& row : ranking.causes) {
      double total = row.prior + row.scarcity + row.pairs + row.likeness + row.others;
      for (const WhyLine& line : row.why) total += line.weight;
      if (row.probability < 1e-9 || row.probability > 1 - 1e-9) continue;
      EXPECT_NEAR(total, std::log(row.probability / (1 - row.probability)), 1e-6);
    }
  }
}

}  // namespace
}  // namespace shoplore::testing
