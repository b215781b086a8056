// Every closed case of the demo asked as if it were new, against the best anybody could do who
// knew the true rates.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <map>
#include <sstream>

#include "corpus-demo/generator.hpp"
#include "corpus-demo/truth.hpp"
#include "indexer/records.hpp"
#include "query/ranking/likely_causes.hpp"
#include "query/snapshot.hpp"

namespace shoplore {
namespace {

struct Shop {
  std::filesystem::path home;
  std::unique_ptr<Records> records;
  std::shared_ptr<const Snapshot> snapshot;
  struct Closed {
    CaseId id;  // cases are numbered in the order they come in
    DemoCase drawn;
  };
  std::vector<Closed> closed;

  Shop() {
    std::string pattern = (std::filesystem::temp_directory_path() / "shoplore-loo-XXXXXX").string();
    home = mkdtemp(pattern.data());
    records = std::make_unique<Records>(std::move(*Records::create({home / "shop"})));
    std::stringstream lines;
    std::uint32_t lines_written = 0;
    generate_workshop(demo_world(), records->vocabulary(), {2'400, 1}, [&](const DemoCase& drawn) {
      lines << case_to_json(drawn.record) << "\n";
      // Showcases are in the records, but nobody knows their true probabilities.
      ++lines_written;
      if (drawn.record.state == CaseState::kClosed && drawn.pattern) {
        closed.push_back({CaseId{lines_written}, drawn});
      }
    });
    EXPECT_TRUE(records->import(lines, [](std::int64_t) {}));
    EXPECT_TRUE(records->follow(std::chrono::seconds(10)));
    snapshot = *Snapshot::open(records->folder());
  }
  ~Shop() { std::filesystem::remove_all(home); }
};

Ranking ask_again(const Shop& shop, const Case& record, CaseId id) {
  const Vocabulary& vocabulary = shop.records->vocabulary();
  const Ledger& ledger = shop.snapshot->ledger();
  const auto evidence = evidence_of(record, vocabulary);
  LeftOut own{id, *ledger.causes().find(cause_key(*record.cause, vocabulary)), evidence,
              known_in(record, vocabulary)};
  return shop.snapshot->ranking().rank(ranking_items(evidence), {}, own).value();
}

struct Hits {
  int first = 0, first_three = 0;
};

TEST(LeaveOneOut, OnTheDemoIsNearTheBestPossible) {
  const Shop shop;
  const World world = demo_world();
  ASSERT_EQ(shop.closed.size(), 2'400U);
  Hits ours, best;
  for (const auto& [id, drawn] : shop.closed) {
    const Ranking ranking = ask_again(shop, drawn.record, id);
    const std::string truth = cause_key(*drawn.record.cause, shop.records->vocabulary());
    for (std::size_t i = 0; i < std::min<std::size_t>(3, ranking.causes.size()); ++i) {
      if (shop.snapshot->ledger().causes().key(ranking.causes[i].cause) != truth) continue;
      ours.first += i == 0 ? 1 : 0;
      ++ours.first_three;
    }
    const auto posterior = true_posterior(world, drawn.record);
    const double own = posterior[*drawn.pattern];
    const auto better = std::count_if(posterior.begin(), posterior.end(),
                                      [&](double other) { return other > own; });
    best.first += better == 0 ? 1 : 0;
    best.first_three += better < 3 ? 1 : 0;
  }
  const double n = static_cast<double>(shop.closed.size());
  std::cout << fmt::format(
      "first: ours {:.4f}, best possible {:.4f}; first three: {:.4f}, {:.4f}\n", ours.first / n,
      best.first / n, ours.first_three / n, best.first_three / n);
  EXPECT_GE(best.first / n, .80) << "a demo that is too hard proves nothing";
  EXPECT_LE(best.first / n, .92) << "a demo that is too easy proves nothing";
  EXPECT_NEAR(ours.first / n, best.first / n, .03);
  EXPECT_NEAR(ours.first_three / n, best.first_three / n, .02);
}

TEST(LeaveOneOut, ProbabilitiesAddUpAndWhyExplainsThem) {
  const Shop shop;
  for (std::size_t i = 0; i < shop.closed.size(); i += 40) {
    const Ranking ranking = ask_again(shop, shop.closed[i].drawn.record, shop.closed[i].id);
    double sum = ranking.not_in_these_records;
    for (const RankedCause& row : ranking.causes) sum += row.probability;
    EXPECT_NEAR(sum, 1, 1e-12);
    // Every row's parts add up to its log-odds.
    for (const RankedCause& row : ranking.causes) {
      double total = row.prior + row.pairs + row.likeness + row.mentions + row.others;
      for (const WhyLine& line : row.why) total += line.weight;
      if (row.probability < 1e-9 || row.probability > 1 - 1e-9) continue;
      EXPECT_NEAR(total, std::log(row.probability / (1 - row.probability)), 1e-6);
    }
  }
}

}  // namespace
}  // namespace shoplore
